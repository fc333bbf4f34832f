package toothmark.wheel;

/**
 * Predicts when the crank will have turned by an angle, and learns from the edge that came.
 *
 * <p>A Kalman filter on (time error, log pace, slope). The slope is an Ornstein-Uhlenbeck process
 * that forgets over some edge intervals (engine torque changes sign within a stroke), the log pace
 * its integral plus a little white noise. The first slot is the time of the tooth itself and not an
 * interval, so a tooth out of place disturbs one innovation and not two.
 *
 * <p>Source: Kalman, J. Basic Eng. 82 (1960) 35-45, doi:10.1115/1.3662552; the integrated
 * Ornstein-Uhlenbeck moments after Gillespie, Phys. Rev. E 54 (1996) 2084,
 * doi:10.1103/PhysRevE.54.2084.
 */
final class SpeedFilter {

  /** Share of the slope's deviation that jumps from edge to edge. */
  private static final double JUMP = 0.3;

  private final double memory;

  /** Mean pace over the interval ahead, seconds a degree. */
  double meanPace;

  /** Variance of the predicted time, in squared edge intervals, without the edge's own jitter. */
  double varTime;

  private double endLogPace;
  private double endPace;
  private double endSlope;
  private double covTimePace;
  private double covTimeSlope;
  private double varPace;
  private double covPaceSlope;
  private double varSlope;

  private double h;
  private double rho;
  private double psi;
  private double phi;
  private double wanderTime;
  private double wanderTimePace;
  private double wanderTimeSlope;
  private double wanderPace;
  private double wanderPaceSlope;
  private double wanderSlope;

  /**
   * Builds a filter.
   *
   * @param memoryIntervals how many local edge intervals the slope lasts
   */
  SpeedFilter(double memoryIntervals) {
    this.memory = memoryIntervals;
  }

  /**
   * Sets how far to look ahead.
   *
   * @param ahead time to the edge in question, in local edge intervals
   * @param roughness standard deviation of the slope here
   */
  void lookAhead(double ahead, double roughness) {
    h = ahead;
    rho = Math.exp(-h / memory);
    psi = memory * (1 - rho);
    phi = memory * (h - psi);
    double q = roughness * roughness;
    double w =
        h < 0.2 * memory
            ? q * 2 * h * h * h / (3 * memory)
            : q * memory * memory * (2 * h / memory - 3 + 4 * rho - rho * rho);
    double late = h / (h + 2 * memory);
    double jump = JUMP * JUMP * q * h;
    double cross = q * memory * (1 - rho) * (1 - rho);
    wanderTime = h * h * (w * (0.15 + 0.183 * late) + jump / 3);
    wanderTimePace = h * (w * (0.375 + 0.125 * late) + jump / 2);
    wanderTimeSlope = cross * Math.min(h / 3, memory);
    wanderPace = w + jump;
    wanderPaceSlope = cross;
    wanderSlope = q * (1 - rho * rho);
  }

  /**
   * Looks ahead by what was set.
   *
   * @param s state at the last tooth, its pace known
   */
  void predict(SpeedState s) {
    double rise = s.slope * psi;
    meanPace = s.pace * exp(s.slope * phi / h);
    endLogPace = s.logPace + rise;
    endPace = s.pace * exp(rise);
    endSlope = s.slope * rho;
    varTime =
        s.varTime
            + 2 * h * s.covTimePace
            + 2 * phi * s.covTimeSlope
            + h * h * s.varPace
            + 2 * h * phi * s.covPaceSlope
            + phi * phi * s.varSlope
            + wanderTime;
    covTimePace =
        s.covTimePace
            + psi * s.covTimeSlope
            + h * s.varPace
            + (h * psi + phi) * s.covPaceSlope
            + phi * psi * s.varSlope
            + wanderTimePace;
    covTimeSlope = rho * (s.covTimeSlope + h * s.covPaceSlope + phi * s.varSlope) + wanderTimeSlope;
    varPace = s.varPace + 2 * psi * s.covPaceSlope + psi * psi * s.varSlope + wanderPace;
    covPaceSlope = rho * (s.covPaceSlope + psi * s.varSlope) + wanderPaceSlope;
    varSlope = rho * rho * s.varSlope + wanderSlope;
  }

  /** The exponential function, quick for small arguments. */
  private static double exp(double x) {
    return x < 0.02 && x > -0.02 ? 1 + x * (1 + x * (0.5 + x * (1.0 / 6))) : Math.exp(x);
  }

  /**
   * Log pace that an edge would teach.
   *
   * @param late how much later than predicted, in local edge intervals
   * @param variance of the predicted time with the edge's own jitter
   * @return log of seconds a degree
   */
  double paceAfter(double late, double variance) {
    return endLogPace + covTimePace / variance * late;
  }

  /**
   * Learns from an edge.
   *
   * @param into where the new state goes
   * @param time of the edge, s
   * @param late how much later than predicted, in local edge intervals
   * @param noise variance of the edge's own place, in squared edge intervals
   * @param interval local edge interval, s
   */
  void correct(SpeedState into, double time, double late, double noise, double interval) {
    double certainty = 1 / (varTime + noise);
    double gainTime = varTime * certainty;
    double gainPace = covTimePace * certainty;
    double gainSlope = covTimeSlope * certainty;
    double change = gainPace * late;
    into.time = time - (1 - gainTime) * late * interval;
    into.logPace = endLogPace + change;
    into.pace = endPace * exp(change);
    into.slope = endSlope + gainSlope * late;
    into.paceKnown = true;
    into.varTime = varTime * (1 - gainTime);
    into.covTimePace = covTimePace * (1 - gainTime);
    into.covTimeSlope = covTimeSlope * (1 - gainTime);
    into.varPace = varPace - gainPace * covTimePace;
    into.covPaceSlope = covPaceSlope - gainPace * covTimeSlope;
    into.varSlope = varSlope - gainSlope * covTimeSlope;
  }

  /**
   * Starts a state from its first two teeth.
   *
   * @param into where the new state goes
   * @param time of the second edge, s
   * @param pace seconds a degree between the two
   * @param h time between them, in local edge intervals
   * @param noise variance of an edge's own place, in squared edge intervals
   * @param roughness standard deviation of the slope here
   */
  static void start(
      SpeedState into, double time, double pace, double h, double noise, double roughness) {
    double q = roughness * roughness;
    into.time = time;
    into.pace = pace;
    into.logPace = Math.log(pace);
    into.slope = 0;
    into.paceKnown = true;
    into.varTime = noise;
    into.covTimePace = noise / h;
    into.covTimeSlope = 0;
    into.varPace = 2 * noise / (h * h) + q * (h * h / 4 + JUMP * JUMP * h);
    into.covPaceSlope = q * h / 2;
    into.varSlope = q;
  }
}
