package toothmark.wheel;

/** Where the teeth of an assumed wheel stand, ready for counting through many turns. */
final class WheelTemplate {

  private static final double TURN = 360.0;

  private final double[] degrees;
  private final boolean reference;

  private WheelTemplate(double[] degrees, boolean reference) {
    this.degrees = degrees;
    this.reference = reference;
  }

  static WheelTemplate of(WheelPattern pattern) {
    double[] d = new double[pattern.teeth()];
    for (int k = 0; k < d.length; k++) {
      d[k] = pattern.degreesAfterTooth1(k + 1);
    }
    return new WheelTemplate(d, pattern.hasReference());
  }

  /** The same wheel with teeth out of place, in degrees by tooth. */
  static WheelTemplate of(WheelPattern pattern, double[] offsets) {
    WheelTemplate t = of(pattern);
    for (int k = 0; k < t.degrees.length; k++) {
      t.degrees[k] += offsets[k];
    }
    return t;
  }

  /** A train of even steps, each a turn of its own: for counting slots before a wheel is known. */
  static WheelTemplate evenSteps() {
    return new WheelTemplate(new double[] {0}, false);
  }

  int teeth() {
    return degrees.length;
  }

  /** How many teeth the first edge may be; a wheel without a reference has no preferred one. */
  int starts() {
    return reference ? degrees.length : 1;
  }

  /**
   * How far a later tooth stands.
   *
   * @param tooth from 0
   * @param steps teeth further on, at least 0
   * @return degrees
   */
  double ahead(int tooth, int steps) {
    int k = tooth + steps;
    if (k < degrees.length) {
      return degrees[k] - degrees[tooth];
    }
    int turns = k / degrees.length;
    return TURN * turns + degrees[k - turns * degrees.length] - degrees[tooth];
  }

  /**
   * The first tooth that stands at least so far ahead.
   *
   * @param tooth from 0
   * @param angle degrees ahead
   * @return steps, at least 1
   */
  int firstStepBeyond(int tooth, double angle) {
    int steps = 1;
    if (angle > TURN) {
      steps = Math.max(1, (int) (Math.floor(angle / TURN) - 1) * degrees.length);
    }
    while (ahead(tooth, steps) < angle) {
      steps++;
    }
    return steps;
  }

  /** The tooth so many steps further on, from 0. */
  int after(int tooth, int steps) {
    int k = tooth + steps;
    return k < degrees.length ? k : k % degrees.length;
  }
}
