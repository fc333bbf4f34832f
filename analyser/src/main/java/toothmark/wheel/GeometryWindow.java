package toothmark.wheel;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import toothmark.units.CrankAngle;

/**
 * Two neighbouring turns: when each tooth passed, and where it should stand.
 *
 * <p>The nominal angle of a tooth is a polynomial of time, plus ripple, less the tooth's offset.
 * {@link #rows} gives these equations with the polynomial projected out.
 */
final class GeometryWindow {

  private static final int COEFFICIENTS = 5;
  private static final double LEAST_SHARE = 0.7;
  private static final double MOST_SPEED_CHANGE = 0.35;
  private static final double FLOOR_DEGREES = 0.01;

  /** Beyond this many deviations a tooth's passing counts less, as 1/deviation (Huber 1964). */
  private static final double HUBER = 2.5;

  private static final double REFERENCE_RPM = 1000;

  /** Waves a turn that gas torque makes; unequal cylinders make the first. */
  private static final int[] GAS_ORDERS = {1, 2, 3, 4, 6};

  /** Waves a turn that the pistons' mass makes. */
  private static final int[] MASS_ORDERS = {2, 3, 4, 6};

  private final WheelPattern pattern;
  private final int[] tooth;
  private final double[] turned;
  private final double[] time;
  private final double[] sigma;
  private final double rpm;

  private GeometryWindow(WheelPattern pattern, ToothEvents events, int from, int to) {
    this.pattern = pattern;
    int n = 0;
    int[] at = new int[to - from];
    for (int i = from; i < to; i++) {
      if (events.kind(i) == ToothKind.SEEN) {
        at[n++] = i;
      }
    }
    tooth = new int[n];
    turned = new double[n];
    time = new double[n];
    sigma = new double[n];
    for (int i = 0; i < n; i++) {
      tooth[i] = events.tooth(at[i]);
      turned[i] =
          CrankAngle.REVOLUTION * (events.revolution(at[i]) - events.revolution(at[0]))
              + pattern.degreesAfterTooth1(tooth[i]);
      time[i] = events.time(at[i]);
    }
    rpm = n < 2 ? 0 : (turned[n - 1] - turned[0]) / (time[n - 1] - time[0]) / 6;
    for (int i = 0; i < n; i++) {
      sigma[i] = Math.hypot(FLOOR_DEGREES, CrankAngle.turned(rpm, events.uncertainty(at[i])));
    }
  }

  /** All pairs of turns that are fast, whole and not changing speed too much. */
  static List<GeometryWindow> all(ToothEvents events, WheelPattern pattern, double slowestRpm) {
    List<GeometryWindow> found = new ArrayList<>();
    int from = 0;
    while (from < events.size()) {
      int revolution = events.revolution(from);
      int next = from;
      while (next < events.size() && events.revolution(next) == revolution) {
        next++;
      }
      int to = next;
      while (to < events.size() && events.revolution(to) <= revolution + 1) {
        to++;
      }
      GeometryWindow w = new GeometryWindow(pattern, events, from, to);
      if (w.isWhole() && w.rpm > slowestRpm && w.isSteady()) {
        found.add(w);
      }
      from = next;
    }
    return found;
  }

  private boolean isWhole() {
    return tooth.length >= LEAST_SHARE * 2 * pattern.teeth()
        && tooth.length > 2 * COEFFICIENTS
        && turned[tooth.length - 1] - turned[0] > 1.5 * CrankAngle.REVOLUTION;
  }

  private boolean isSteady() {
    int n = tooth.length;
    double first = (turned[n / 2] - turned[0]) / (time[n / 2] - time[0]);
    double second = (turned[n - 1] - turned[n / 2]) / (time[n - 1] - time[n / 2]);
    return Math.abs(second - first) < MOST_SPEED_CHANGE * Math.min(first, second);
  }

  /** Places of the teeth, run-out, ripple of gas torque, ripple of the pistons' mass. */
  static int unknowns(int teeth) {
    return teeth + 2 + 2 * GAS_ORDERS.length + 2 * MASS_ORDERS.length;
  }

  /** The equations; known unknowns and a scale lessen the weight of outliers. */
  Rows rows(RealVector known, double scale) {
    int n = tooth.length;
    double[][] polynomial = polynomial();
    double[][] g = new double[n][];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      g[i] = row(i);
      y[i] = turned[i];
    }
    Rows plain = new Rows(g, y, new double[n]);
    plain.weigh(polynomial, sigma);
    plain.project(polynomial);
    if (known == null) {
      return plain;
    }
    double[] r = plain.residuals(known);
    double[] weaker = new double[n];
    for (int i = 0; i < n; i++) {
      weaker[i] = sigma[i] * Math.sqrt(Math.max(1, Math.abs(r[i]) / (HUBER * scale)));
    }
    double[][] again = polynomial();
    double[][] g2 = new double[n][];
    for (int i = 0; i < n; i++) {
      g2[i] = row(i);
    }
    Rows robust = new Rows(g2, turned.clone(), new double[n]);
    robust.weigh(again, weaker);
    robust.project(again);
    return robust;
  }

  private double[] row(int i) {
    int teeth = pattern.teeth();
    double[] row = new double[unknowns(teeth)];
    double a = Math.toRadians(pattern.degreesAfterTooth1(tooth[i]));
    row[tooth[i] - 1] = -1;
    row[teeth] = -Math.cos(a);
    row[teeth + 1] = -Math.sin(a);
    int at = teeth + 2;
    double strength = rippleStrength(rpm);
    for (int order : GAS_ORDERS) {
      row[at++] = strength * Math.cos(order * a);
      row[at++] = strength * Math.sin(order * a);
    }
    for (int order : MASS_ORDERS) {
      row[at++] = Math.cos(order * a);
      row[at++] = Math.sin(order * a);
    }
    return row;
  }

  double rpm() {
    return rpm;
  }

  /** The swing of the crank under even torque, as a share of that at 1000 rev/min. */
  static double rippleStrength(double rpm) {
    return REFERENCE_RPM / rpm * REFERENCE_RPM / rpm;
  }

  /** Powers of time, by column. */
  private double[][] polynomial() {
    int n = time.length;
    double[][] p = new double[COEFFICIENTS][n];
    double middle = 0.5 * (time[0] + time[n - 1]);
    double half = 0.5 * (time[n - 1] - time[0]);
    for (int i = 0; i < n; i++) {
      double x = (time[i] - middle) / half;
      double power = 1;
      for (int c = 0; c < COEFFICIENTS; c++) {
        p[c][i] = power;
        power *= x;
      }
    }
    return p;
  }

  /** Equations in the unknowns that all windows share. */
  static final class Rows {

    private final double[][] g;
    private final double[] y;
    private final double[] weights;

    private Rows(double[][] g, double[] y, double[] weights) {
      this.g = g;
      this.y = y;
      this.weights = weights;
    }

    private void weigh(double[][] polynomial, double[] sigma) {
      for (int i = 0; i < y.length; i++) {
        weights[i] = 1 / sigma[i];
        y[i] *= weights[i];
        for (int j = 0; j < g[i].length; j++) {
          g[i][j] *= weights[i];
        }
        for (double[] column : polynomial) {
          column[i] *= weights[i];
        }
      }
    }

    /** Takes the polynomial out of every column, by modified Gram-Schmidt. */
    private void project(double[][] polynomial) {
      for (int c = 0; c < polynomial.length; c++) {
        double[] q = polynomial[c];
        for (int b = 0; b < c; b++) {
          double d = dot(polynomial[b], q);
          for (int i = 0; i < q.length; i++) {
            q[i] -= d * polynomial[b][i];
          }
        }
        double norm = Math.sqrt(dot(q, q));
        for (int i = 0; i < q.length; i++) {
          q[i] /= norm;
        }
        takeOut(q);
      }
    }

    private void takeOut(double[] q) {
      int columns = g[0].length;
      double[] along = new double[columns];
      double alongY = 0;
      for (int i = 0; i < q.length; i++) {
        alongY += q[i] * y[i];
        for (int j = 0; j < columns; j++) {
          along[j] += q[i] * g[i][j];
        }
      }
      for (int i = 0; i < q.length; i++) {
        y[i] -= alongY * q[i];
        for (int j = 0; j < columns; j++) {
          g[i][j] -= along[j] * q[i];
        }
      }
    }

    private static double dot(double[] a, double[] b) {
      double s = 0;
      for (int i = 0; i < a.length; i++) {
        s += a[i] * b[i];
      }
      return s;
    }

    /** What the equations leave, in standard deviations of the edges. */
    double[] residuals(RealVector known) {
      double[] r = y.clone();
      if (known != null) {
        for (int i = 0; i < r.length; i++) {
          for (int j = 0; j < g[i].length; j++) {
            r[i] -= g[i][j] * known.getEntry(j);
          }
        }
      }
      return r;
    }

    void addTo(RealMatrix normal, RealVector right) {
      int n = g[0].length;
      double[] sums = new double[n * n];
      for (int i = 0; i < y.length; i++) {
        double[] row = g[i];
        for (int a = 0; a < n; a++) {
          double v = row[a];
          for (int b = a; b < n; b++) {
            sums[a * n + b] += v * row[b];
          }
          right.addToEntry(a, v * y[i]);
        }
      }
      for (int a = 0; a < n; a++) {
        for (int b = a; b < n; b++) {
          normal.addToEntry(a, b, sums[a * n + b]);
          if (b > a) {
            normal.addToEntry(b, a, sums[a * n + b]);
          }
        }
      }
    }
  }
}
