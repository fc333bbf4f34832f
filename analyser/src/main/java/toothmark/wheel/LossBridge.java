package toothmark.wheel;

/**
 * The motion through a stretch without edges.
 *
 * <p>The log pace is a cubic in angle that meets speed and slope at both ends, plus one symmetric
 * bump whose height makes the time come out. Slopes are taken back where the stretch is longer than
 * they last.
 */
final class LossBridge {

  /** Teeth on each side from which speed and slope are taken. */
  private static final int REACH = 8;

  /** A slope is trusted over about so many degrees. */
  private static final double SLOPE_LASTS = 75;

  private static final int PARTS = 64;

  private final double startTime;
  private final double degrees;
  private final double pace0;
  private final double pace1;
  private final double slope0;
  private final double slope1;
  private final double bump;

  private LossBridge(double startTime, double degrees, End before, End after, double bump) {
    this.startTime = startTime;
    this.degrees = degrees;
    this.pace0 = before.logPace;
    this.pace1 = after.logPace;
    double lasts = SLOPE_LASTS / (SLOPE_LASTS + degrees);
    this.slope0 = before.slope * degrees * lasts;
    this.slope1 = after.slope * degrees * lasts;
    this.bump = bump;
  }

  /** Log of the pace and its slope a degree at one end. */
  private record End(double logPace, double slope) {}

  /**
   * Bridges from one seen tooth to the next.
   *
   * @param seen the teeth
   * @param i tooth before the loss; i + 1 is the one after
   * @param extraTurns whole turns added to the angle between them
   * @return the bridge
   */
  static LossBridge between(TurnCount seen, int i, int extraTurns) {
    double seconds = seen.times[i + 1] - seen.times[i];
    double angle = seen.degrees[i + 1] - seen.degrees[i] + 360.0 * extraTurns;
    double plain = Math.log(seconds / angle);
    End before = end(seen, i, -1, plain);
    End after = end(seen, i + 1, 1, plain);
    double bump = 0;
    for (int k = 0; k < 12; k++) {
      LossBridge b = new LossBridge(0, angle, before, after, bump);
      double now = b.timeAt(angle);
      double more = new LossBridge(0, angle, before, after, bump + 1e-4).timeAt(angle);
      double step = (seconds - now) / ((more - now) / 1e-4);
      bump += Math.max(-1, Math.min(1, step));
      if (Math.abs(step) < 1e-9) {
        break;
      }
    }
    return new LossBridge(seen.times[i], angle, before, after, bump);
  }

  /** How far the log pace must bulge between its ends for the time to come out. */
  double bulge() {
    return Math.abs(bump);
  }

  /**
   * When the crank had turned by an angle.
   *
   * @param angle degrees after the tooth before the loss
   * @return s
   */
  double timeAt(double angle) {
    int parts = Math.max(2, (int) Math.ceil(PARTS * angle / degrees));
    double step = angle / parts;
    double sum = 0;
    for (int p = 0; p < parts; p++) {
      double a = p * step;
      sum += pace(a) + 4 * pace(a + step / 2) + pace(a + step);
    }
    return startTime + sum * step / 6;
  }

  private double pace(double angle) {
    double u = angle / degrees;
    double v = 1 - u;
    double cubic =
        pace0 * v * v * (1 + 2 * u)
            + pace1 * u * u * (1 + 2 * v)
            + slope0 * u * v * v
            - slope1 * u * u * v;
    return Math.exp(cubic + bump * 16 * u * u * v * v);
  }

  /** Speed and slope from a parabola through the nearest teeth of one side. */
  private static End end(TurnCount seen, int at, int direction, double plain) {
    int n = 1;
    while (n < REACH && inside(seen, at + direction * n, direction)) {
      n++;
    }
    if (n < 2) {
      return new End(plain, 0);
    }
    double scale = seen.degrees[at + direction * (n - 1)] - seen.degrees[at];
    double rise = seen.times[at + direction * (n - 1)] - seen.times[at];
    double base = Math.log(rise / scale);
    if (n < 4) {
      return new End(base, 0);
    }
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    double sxt = 0;
    double syt = 0;
    for (int k = 1; k < n; k++) {
      double x = (seen.degrees[at + direction * k] - seen.degrees[at]) / scale;
      double t = (seen.times[at + direction * k] - seen.times[at]) / rise;
      double y = x * x;
      sxx += x * x;
      sxy += x * y;
      syy += y * y;
      sxt += x * t;
      syt += y * t;
    }
    double det = sxx * syy - sxy * sxy;
    double linear = (sxt * syy - syt * sxy) / det;
    double square = (sxx * syt - sxy * sxt) / det;
    if (!(linear > 0.3 && linear < 3)) {
      return new End(base, 0);
    }
    return new End(base + Math.log(linear), 2 * square / linear / scale);
  }

  private static boolean inside(TurnCount seen, int i, int direction) {
    if (i < 0 || i >= seen.size()) {
      return false;
    }
    int later = direction > 0 ? i : i + 1;
    return !seen.fresh[later] && Math.abs(seen.degrees[i] - seen.degrees[i - direction]) < 100;
  }
}
