package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
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

  /**
   * The waves that the crank makes in every turn.
   *
   * @param orders of those that firing makes, how many to the turn
   * @param steadyOrders of those that the pistons' inertia makes, alike at all speeds
   * @param freedom standard deviation of what a window may have of each beside the law that all
   *     share, degrees at 1000 rev/min over the scale of the passings
   */
  record Ripple(int[] orders, int[] steadyOrders, double[] freedom) {}

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
      if (w.isWhole() && w.rpm > slowestRpm && w.speedChange() < MOST_SPEED_CHANGE) {
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

  /** By how much the second half of the window is faster than the first, as a share. */
  double speedChange() {
    int n = tooth.length;
    double first = (turned[n / 2] - turned[0]) / (time[n / 2] - time[0]);
    double second = (turned[n - 1] - turned[n / 2]) / (time[n - 1] - time[n / 2]);
    return Math.abs(second - first) / Math.min(first, second);
  }

  /**
   * The equations with each tooth's passing as certain as its edge.
   *
   * @param ripple the waves of firing
   */
  Rows rows(Ripple ripple) {
    return rows(ripple, sigma);
  }

  /**
   * The equations with less weight to what does not fit: single passings, and the whole window
   * where the crank did what no equation says.
   *
   * @param ripple the waves of firing
   * @param residuals of the plain equations, in standard deviations of the edges
   * @param scale that of all windows
   */
  Rows robustRows(Ripple ripple, double[] residuals, double scale) {
    double misfit = Math.max(1, Math.sqrt(Rows.dot(residuals, residuals) / sigma.length) / scale);
    double[] weaker = new double[sigma.length];
    for (int i = 0; i < weaker.length; i++) {
      double outlying = Math.max(1, Math.abs(residuals[i]) / (HUBER * misfit * scale));
      weaker[i] = misfit * sigma[i] * Math.sqrt(outlying);
    }
    return rows(ripple, weaker);
  }

  private Rows rows(Ripple ripple, double[] sigmas) {
    int n = tooth.length;
    int first = pattern.teeth() + 2;
    int waves = 2 * ripple.orders().length;
    double[][] g = new double[n + waves][first + waves + 2 * ripple.steadyOrders().length];
    double[] y = new double[n + waves];
    double[][] own = new double[COEFFICIENTS + waves][n + waves];
    for (int i = 0; i < n; i++) {
      fill(g[i], i, ripple, 1 / sigmas[i]);
      y[i] = turned[i] / sigmas[i];
      powers(own, i, 1 / sigmas[i]);
      for (int w = 0; w < waves; w++) {
        own[COEFFICIENTS + w][i] = g[i][first + w];
      }
    }
    for (int w = 0; w < waves; w++) {
      own[COEFFICIENTS + w][n + w] = 1 / ripple.freedom()[w / 2];
    }
    Rows rows = new Rows(g, y, n);
    rows.takeOut(own);
    return rows;
  }

  private void fill(double[] row, int i, Ripple ripple, double weight) {
    int teeth = pattern.teeth();
    double a = Math.toRadians(pattern.degreesAfterTooth1(tooth[i]));
    row[tooth[i] - 1] = -weight;
    row[teeth] = -weight * Math.cos(a);
    row[teeth + 1] = -weight * Math.sin(a);
    int next = waves(row, teeth + 2, ripple.orders(), a, weight * rippleStrength(rpmAt(i)));
    waves(row, next, ripple.steadyOrders(), a, weight);
  }

  private static int waves(double[] row, int first, int[] orders, double a, double size) {
    int column = first;
    for (int order : orders) {
      row[column++] = size * Math.cos(order * a);
      row[column++] = size * Math.sin(order * a);
    }
    return column;
  }

  private void powers(double[][] columns, int i, double weight) {
    double first = time[0];
    double last = time[time.length - 1];
    double x = (2 * time[i] - first - last) / (last - first);
    double power = weight;
    for (int c = 0; c < COEFFICIENTS; c++) {
      columns[c][i] = power;
      power *= x;
    }
  }

  double rpm() {
    return rpm;
  }

  /** Speed while a tooth passes, without the ripple: it is linear from half to half. */
  private double rpmAt(int i) {
    int n = tooth.length;
    int m = n / 2;
    double first = (turned[m] - turned[0]) / (time[m] - time[0]);
    double second = (turned[n - 1] - turned[m]) / (time[n - 1] - time[m]);
    double slope = 2 * (second - first) / (time[n - 1] - time[0]);
    return (first + slope * (time[i] - 0.5 * (time[0] + time[m]))) / 6;
  }

  /** The swing of the crank under even torque, as a share of that at 1000 rev/min. */
  static double rippleStrength(double rpm) {
    return REFERENCE_RPM / rpm * REFERENCE_RPM / rpm;
  }

  /** Equations in the unknowns that all windows share. */
  static final class Rows {

    private final double[][] g;
    private final double[] y;
    private final int passings;

    /** The first rows are of passings, the others hold what is the window's own. */
    private Rows(double[][] g, double[] y, int passings) {
      this.g = g;
      this.y = y;
      this.passings = passings;
    }

    /** Takes what is the window's own out of every column, by modified Gram-Schmidt. */
    private void takeOut(double[][] own) {
      for (int c = 0; c < own.length; c++) {
        double[] q = own[c];
        for (int b = 0; b < c; b++) {
          double d = dot(own[b], q);
          for (int i = 0; i < q.length; i++) {
            q[i] -= d * own[b][i];
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
      double[] r = Arrays.copyOf(y, passings);
      for (int i = 0; i < r.length; i++) {
        for (int j = 0; j < g[i].length; j++) {
          r[i] -= g[i][j] * known.getEntry(j);
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
