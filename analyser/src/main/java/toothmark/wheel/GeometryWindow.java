package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
   * @param waves for each tooth cosine and sine of the turn, of each order that firing makes, and
   *     of each that the pistons' inertia makes, alike at all speeds
   * @param freedom standard deviation of what a window may have of each that firing makes beside
   *     the law that all share, degrees at 1000 rev/min over the scale of the passings
   */
  record Ripple(double[][] waves, double[] freedom) {}

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
      double u = CrankAngle.turned(rpm, events.uncertainty(at[i]));
      sigma[i] = Math.sqrt(FLOOR_DEGREES * FLOOR_DEGREES + u * u);
    }
  }

  /**
   * Where a window lies.
   *
   * @param from first event
   * @param to end, exclusive
   * @param speedChange by how much its second half is faster than the first, as a share
   */
  record Place(int from, int to, double speedChange) {}

  /** All pairs of turns that are fast, whole and not changing speed too much. */
  static List<Place> all(ToothEvents events, WheelPattern pattern, double slowestRpm) {
    List<Place> found = new ArrayList<>();
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
        found.add(new Place(from, to, w.speedChange()));
      }
      from = next;
    }
    return found;
  }

  static GeometryWindow at(Place place, ToothEvents events, WheelPattern pattern) {
    return new GeometryWindow(pattern, events, place.from, place.to);
  }

  private boolean isWhole() {
    return tooth.length >= LEAST_SHARE * 2 * pattern.teeth()
        && tooth.length > 2 * COEFFICIENTS
        && turned[tooth.length - 1] - turned[0] > 1.5 * CrankAngle.REVOLUTION;
  }

  /** By how much the second half of the window is faster than the first, as a share. */
  private double speedChange() {
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
    int waves = 2 * ripple.freedom().length;
    Rows rows = new Rows(pattern.teeth(), tooth, waves, ripple.waves()[0].length);
    double[][] own = new double[COEFFICIENTS + waves][n + waves];
    for (int i = 0; i < n; i++) {
      double weight = 1 / sigmas[i];
      rows.weight[i] = weight;
      rows.y[i] = turned[i] * weight;
      fill(rows.swings[i], i, ripple, weight);
      powers(own, i, weight);
      for (int w = 0; w < waves; w++) {
        own[COEFFICIENTS + w][i] = rows.swings[i][2 + w];
      }
    }
    for (int w = 0; w < waves; w++) {
      own[COEFFICIENTS + w][n + w] = 1 / ripple.freedom()[w / 2];
    }
    rows.takeOut(own);
    return rows;
  }

  private void fill(double[] row, int i, Ripple ripple, double weight) {
    double[] waves = ripple.waves()[tooth[i] - 1];
    double size = weight * rippleStrength(rpmAt(i));
    int steady = 2 + 2 * ripple.freedom().length;
    for (int j = 0; j < waves.length; j++) {
      row[j] = (j < 2 ? -weight : j < steady ? size : weight) * waves[j];
    }
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

  /**
   * Equations in the unknowns that all windows share: the teeth, then the swings of the crank.
   *
   * <p>A passing has one tooth, so that column of its row is a single number; what is the window's
   * own is an orthonormal basis Q beside them. With P = I - QQ' the normal equations are G'PG = G'G
   * - (Q'G)'(Q'G) and G'Py, and PG itself is never formed.
   */
  static final class Rows {

    private final int teeth;
    private final int[] tooth;
    private final int passings;

    /** Minus this stands in the column of the passing's tooth. */
    private final double[] weight;

    private final double[][] swings;
    private final double[] y;
    private double[][] basis = {};

    /** The first rows are of passings, the others hold what is the window's own. */
    private Rows(int teeth, int[] tooth, int ownRows, int swings) {
      this.teeth = teeth;
      this.tooth = tooth;
      this.passings = tooth.length;
      this.weight = new double[passings];
      this.swings = new double[passings][swings];
      this.y = new double[passings + ownRows];
    }

    /** Takes what is the window's own out of y, by modified Gram-Schmidt. */
    private void takeOut(double[][] own) {
      for (int c = 0; c < own.length; c++) {
        double[] q = own[c];
        for (int b = 0; b < c; b++) {
          add(q, -dot(own[b], q), own[b]);
        }
        double norm = Math.sqrt(dot(q, q));
        for (int i = 0; i < q.length; i++) {
          q[i] /= norm;
        }
        add(y, -dot(q, y), q);
      }
      basis = own;
    }

    private static void add(double[] to, double factor, double[] of) {
      for (int i = 0; i < to.length; i++) {
        to[i] += factor * of[i];
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
      double[] x = known.toArray();
      double[] r = new double[y.length];
      for (int i = 0; i < passings; i++) {
        double fitted = -weight[i] * x[tooth[i] - 1];
        for (int j = 0; j < swings[i].length; j++) {
          fitted += swings[i][j] * x[teeth + j];
        }
        r[i] = -fitted;
      }
      for (double[] q : basis) {
        add(r, -dot(q, r), q);
      }
      add(r, 1, y);
      return Arrays.copyOf(r, passings);
    }

    /**
     * Adds the normal equations of this window.
     *
     * @param normal upper triangle only
     * @param right right-hand sides
     */
    void addTo(double[][] normal, double[] right) {
      for (int i = 0; i < passings; i++) {
        int t = tooth[i] - 1;
        double w = -weight[i];
        double[] s = swings[i];
        normal[t][t] += w * w;
        right[t] += w * y[i];
        for (int a = 0; a < s.length; a++) {
          normal[t][teeth + a] += w * s[a];
          right[teeth + a] += s[a] * y[i];
          for (int b = a; b < s.length; b++) {
            normal[teeth + a][teeth + b] += s[a] * s[b];
          }
        }
      }
      for (double[] q : basis) {
        subtractSquare(normal, along(q));
      }
    }

    /** Q'G for one q. */
    private double[] along(double[] q) {
      double[] along = new double[teeth + swings[0].length];
      for (int i = 0; i < passings; i++) {
        along[tooth[i] - 1] -= q[i] * weight[i];
        for (int j = 0; j < swings[i].length; j++) {
          along[teeth + j] += q[i] * swings[i][j];
        }
      }
      return along;
    }

    private static void subtractSquare(double[][] normal, double[] v) {
      for (int a = 0; a < v.length; a++) {
        double[] row = normal[a];
        for (int b = a; b < v.length; b++) {
          row[b] -= v[a] * v[b];
        }
      }
    }
  }
}
