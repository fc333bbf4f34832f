package toothmark.timing;

import toothmark.edges.SensorKind;
import toothmark.units.CrankAngle;

/**
 * How far the lag of a coil sensor falls short of a fixed time.
 *
 * <p>Coil and load are a filter of first order with time constant tau (RL circuit; any text on
 * circuits). At low frequency every wave lags by tau; a sine of angular frequency w lags by atan(w
 * tau)/w, and one with a third harmonic, steeper through zero, by less. What zero the filtered wave
 * then has is found by Newton's method.
 *
 * <p>The third harmonic: a tooth that passes a pole of its own width, of share s of the pitch L,
 * makes a flux that overlaps as a triangle, so that voltages have harmonics as sin²(pi k s)/k; at a
 * distance d each is weakened by exp(-2 pi k d/L) (spacing loss, Wallace 1951,
 * doi:10.1002/j.1538-7305.1951.tb03699.x). Over teeth of 40 to 50 % of pitches of 8 to 13 mm, 1 to
 * 1.5 mm from the pole, 0.02 to 0.12 of the first.
 *
 * @param slots of the wheel, teeth and gaps
 * @param seconds time constant; 0 for a sensor that is late by a fixed time
 * @param third height of the third harmonic over that of the first, in the voltage
 */
record LagBend(int slots, double seconds, double third) {

  /** Middle of the range of usual waves, and standard deviation of a rectangle over it. */
  private static final double USUAL_THIRD = 0.07;

  private static final double THIRD_UNCERTAINTY = 0.05 / Math.sqrt(3);

  private static final int STEPS = 4;

  /** A fixed time, of a wave of usual shape. */
  static LagBend none(WheelSetting wheel) {
    return new LagBend(wheel.pattern().slots(), 0, USUAL_THIRD);
  }

  /** The same wave with a lag of a sensor. */
  LagBend of(SensorKind sensor, double microseconds) {
    boolean coil = sensor != SensorKind.HALL;
    return new LagBend(slots, coil ? Math.max(0, microseconds * 1e-6) : 0, third);
  }

  /** What a fixed time would be more than the filter, degrees. */
  double degreesAt(double rpm) {
    double x = 2 * Math.PI * slots * rpm / 60 * seconds;
    double lag = Math.atan(x);
    double lagOfThird = Math.atan(3 * x);
    double first = Math.cos(lag);
    double weak = third * Math.cos(lagOfThird);
    double zero = lag;
    for (int i = 0; i < STEPS; i++) {
      double value = first * Math.sin(zero - lag) + weak * Math.sin(3 * zero - lagOfThird);
      double slope = first * Math.cos(zero - lag) + 3 * weak * Math.cos(3 * zero - lagOfThird);
      zero -= value / slope;
    }
    return CrankAngle.turned(rpm, seconds) - Math.toDegrees(zero) / slots;
  }

  /** The same of a wave that is steeper through zero by one standard uncertainty. */
  LagBend steeper() {
    return new LagBend(slots, seconds, third + THIRD_UNCERTAINTY);
  }
}
