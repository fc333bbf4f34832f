package toothmark.simulator;

/**
 * What makes the sensor's place on the wheel shake: a bracket that swings, or the nose of the crank
 * that twists against its flywheel. A damped oscillator that every firing kicks.
 *
 * @param hertz its own frequency
 * @param damping share of the critical damping
 * @param kickDegrees by how much a firing would move it if it were free of damping, crank degrees
 * @param irregularity standard deviation of a kick as a share of the mean one
 * @param gapMmPerDegree by how much the clearance grows as it moves: a bracket's does, a twisting
 *     crank's does not
 */
public record Vibration(
    double hertz, double damping, double kickDegrees, double irregularity, double gapMmPerDegree) {
  /** Nothing shakes. */
  public static final Vibration NONE = new Vibration(200.0, 0.02, 0.0, 0.0, 0.0);

  /** Angle and speed of the oscillator on a motion's grid, degrees and degrees a second. */
  record Course(double[] degrees, double[] degreesPerSecond) {}

  boolean isStill() {
    return kickDegrees == 0.0;
  }

  /**
   * How it moves while a crank turns.
   *
   * @param angleDegrees of the crank at each step
   * @param firingDegrees from one firing to the next
   */
  Course along(double[] angleDegrees, double stepSeconds, double firingDegrees, Randomness random) {
    double omega = 2.0 * Math.PI * hertz;
    double damped = omega * Math.sqrt(1.0 - damping * damping);
    double fade = StrictMath.exp(-damping * omega * stepSeconds);
    double cos = fade * StrictMath.cos(damped * stepSeconds);
    double sin = fade * StrictMath.sin(damped * stepSeconds);
    double[] x = new double[angleDegrees.length];
    double[] v = new double[angleDegrees.length];
    for (int i = 1; i < x.length; i++) {
      // with w the speed over the damped frequency, (x, w) turns and fades
      double w = (v[i - 1] + damping * omega * x[i - 1]) / damped;
      x[i] = cos * x[i - 1] + sin * w;
      w = cos * w - sin * x[i - 1];
      v[i] = damped * w - damping * omega * x[i];
      boolean fires =
          Math.floor(angleDegrees[i] / firingDegrees)
              > Math.floor(angleDegrees[i - 1] / firingDegrees);
      if (fires) {
        v[i] += kickDegrees * omega * (1.0 + irregularity * random.gaussian());
      }
    }
    return new Course(x, v);
  }
}
