package toothmark.wheel;

/**
 * What one hypothesis knows of the motion at its last tooth: when the tooth passed, the logarithm
 * of the pace (seconds a degree), its slope, and their covariance.
 *
 * <p>The time error is in units of the local edge interval, the slope in log units a local edge
 * interval, so that nothing in the covariance depends on the wheel that is assumed.
 */
class SpeedState {

  /** Filtered time of the last tooth, s. */
  double time;

  /**
   * Natural logarithm of the pace, seconds a degree; meaningless while {@link #paceKnown} is not
   * set.
   */
  double logPace;

  /** Pace, seconds a degree. */
  double pace;

  /** Change of the log pace over one local edge interval. */
  double slope;

  /** Whether two teeth have given a pace. */
  boolean paceKnown;

  double varTime;
  double covTimePace;
  double covTimeSlope;
  double varPace;
  double covPaceSlope;
  double varSlope;

  void copySpeed(SpeedState other) {
    time = other.time;
    logPace = other.logPace;
    pace = other.pace;
    slope = other.slope;
    paceKnown = other.paceKnown;
    varTime = other.varTime;
    covTimePace = other.covTimePace;
    covTimeSlope = other.covTimeSlope;
    varPace = other.varPace;
    covPaceSlope = other.covPaceSlope;
    varSlope = other.varSlope;
  }
}
