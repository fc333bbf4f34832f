package toothmark.chart;

import toothmark.wheel.WheelPattern;

/** How the crank of the run that is written down by hand turns, and which wheel turns with it. */
final class SampleMotion {

  static final WheelPattern WHEEL = WheelPattern.of(36, 1);
  static final double END = 4.0;
  static final double TOOTH1_BTDC = 87.4;
  static final int BENT = 11;
  static final double BENT_BY = 0.8;

  private SampleMotion() {}

  /** Crank angle: a steady rise of speed with a ripple of order 2. */
  static double angleAt(double t) {
    double smooth = 6 * (1000 * t + 500 * t * t);
    return smooth + 0.8 * Math.sin(Math.toRadians(2 * smooth));
  }

  static double timeAt(double degrees) {
    double low = 0;
    double high = END + 1;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (angleAt(middle) < degrees) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  static double rpmAt(double t) {
    return (angleAt(t + 1e-6) - angleAt(t - 1e-6)) / 2e-6 / 6;
  }
}
