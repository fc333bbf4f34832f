package toothmark.wheel;

/**
 * Predicts when the crank will have turned by an angle, and learns from the edge that came.
 *
 * <p>A Kalman filter on (time error, log pace, slope). The slope is an Ornstein-Uhlenbeck process
 * that forgets over {@link #memory} edge intervals (engine torque changes sign within a stroke),
 * the log pace its integral plus a little white noise. The first slot is the time of the tooth
 * itself and not an interval, so a tooth out of place disturbs one innovation and not two.
 *
 * <p>Source: Kalman, J. Basic Eng. 82 (1960) 35-45, doi:10.1115/1.3662552; the integrated
 * Ornstein-Uhlenbeck moments after Gillespie, Phys. Rev. E 54 (1996) 2084,
 * doi:10.1103/PhysRevE.54.2084.
 */
final class SpeedFilter {

  /** Share of the slope's deviation that jumps from edge to edge. */
  private static final double JUMP = 0.3;

  private final double memory;

  /** Mean log pace over the interval ahead. */
  double meanLogPace;

  /** Variance of the predicted time, in squared edge intervals, without the edge's own jitter. */
  double varTime;

  private double endLogPace;
  private double endSlope;
  private double covTimePace;
  private double covTimeSlope;
  private double varPace;
  private double covPaceSlope;
  private double varSlope;

  SpeedFilter(double memoryIntervals) {
    this.memory = memoryIntervals;
  }

  double memory() {
    return memory;
  }

  /**
   * Looks ahead.
   *
   * @param s state at the last tooth, its pace known
   * @param h time to the edge in question, in local edge intervals
   * @param roughness standard deviation of the slope here
   */
  void predict(SpeedState s, double h, double roughness) {
    double rho = h < 0.02 * memory ? 1 - h / memory : Math.exp(-h / memory);
    double psi = memory * (1 - rho);
    double phi = memory * (h - psi);
    meanLogPace = s.logPace + s.slope * phi / h;
    endLogPace = s.logPace + s.slope * psi;
    endSlope = s.slope * rho;
    varTime =
        s.varTime
            + 2 * h * s.covTimePace
            + 2 * phi * s.covTimeSlope
            + h * h * s.varPace
            + 2 * h * phi * s.covPaceSlope
            + phi * phi * s.varSlope;
    covTimePace =
        s.covTimePace
            + psi * s.covTimeSlope
            + h * s.varPace
            + (h * psi + phi) * s.covPaceSlope
            + phi * psi * s.varSlope;
    covTimeSlope = rho * (s.covTimeSlope + h * s.covPaceSlope + phi * s.varSlope);
    varPace = s.varPace + 2 * psi * s.covPaceSlope + psi * psi * s.varSlope;
    covPaceSlope = rho * (s.covPaceSlope + psi * s.varSlope);
    varSlope = rho * rho * s.varSlope;
    addWander(h, rho, roughness * roughness);
  }

  /** Adds what the motion may have done on its own over the interval. */
  private void addWander(double h, double rho, double q) {
    double wander = q * memory * memory * (2 * h / memory - 3 + 4 * rho - rho * rho);
    double w = h < 0.2 * memory ? q * 2 * h * h * h / (3 * memory) : wander;
    double late = h / (h + 2 * memory);
    double jump = JUMP * JUMP * q * h;
    double cross = q * memory * (1 - rho) * (1 - rho);
    varTime += h * h * (w * (0.15 + 0.183 * late) + jump / 3);
    covTimePace += h * (w * (0.375 + 0.125 * late) + jump / 2);
    covTimeSlope += cross * Math.min(h / 3, memory);
    varPace += w + jump;
    covPaceSlope += cross;
    varSlope += q * (1 - rho * rho);
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
    double s = varTime + noise;
    double gainTime = varTime / s;
    double gainPace = covTimePace / s;
    double gainSlope = covTimeSlope / s;
    into.time = time - (1 - gainTime) * late * interval;
    into.logPace = endLogPace + gainPace * late;
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
   * @param logPace log of seconds a degree between the two
   * @param h time between them, in local edge intervals
   * @param noise variance of an edge's own place, in squared edge intervals
   * @param roughness standard deviation of the slope here
   */
  static void start(
      SpeedState into, double time, double logPace, double h, double noise, double roughness) {
    double q = roughness * roughness;
    into.time = time;
    into.logPace = logPace;
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
