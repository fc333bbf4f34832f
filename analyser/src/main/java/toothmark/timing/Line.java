package toothmark.timing;

/**
 * A straight line over speed with its full covariance: value(n) = middle - 6e-6 delay (n - centre).
 *
 * @param centreRpm speed at which the middle holds, rev/min
 * @param middleDegrees value there, degrees
 * @param delayMicroseconds how late, microseconds
 * @param middleVariance variance of the middle, square degrees
 * @param delayVariance variance of the delay, square microseconds
 * @param covariance of both
 */
record Line(
    double centreRpm,
    double middleDegrees,
    double delayMicroseconds,
    double middleVariance,
    double delayVariance,
    double covariance) {

  /** Degrees for each microsecond and each rev/min. */
  static final double DEGREES = 6e-6;

  double at(double rpm) {
    return middleDegrees - DEGREES * delayMicroseconds * (rpm - centreRpm);
  }

  double varianceAt(double rpm) {
    double x = -DEGREES * (rpm - centreRpm);
    return middleVariance + 2 * x * covariance + x * x * delayVariance;
  }

  /** Covariance of the value at a speed with the delay. */
  double covarianceAt(double rpm) {
    return covariance - DEGREES * (rpm - centreRpm) * delayVariance;
  }

  /** The same line about another speed. */
  Line about(double rpm) {
    return new Line(
        rpm, at(rpm), delayMicroseconds, varianceAt(rpm), delayVariance, covarianceAt(rpm));
  }

  /** The sum of two lines whose errors are independent. */
  Line plus(Line other) {
    Line o = other.about(centreRpm);
    return new Line(
        centreRpm,
        middleDegrees + o.middleDegrees,
        delayMicroseconds + o.delayMicroseconds,
        middleVariance + o.middleVariance,
        delayVariance + o.delayVariance,
        covariance + o.covariance);
  }

  /** The same line so much higher. */
  Line raised(double degrees) {
    return plus(new Line(centreRpm, degrees, 0, 0, 0, 0));
  }

  /** With all variances multiplied. */
  Line withVarianceTimes(double factor) {
    return new Line(
        centreRpm,
        middleDegrees,
        delayMicroseconds,
        middleVariance * factor,
        delayVariance * factor,
        covariance * factor);
  }

  /** What is left after learning the delay independently: Bayes' rule for normal errors. */
  Line knowingDelay(double microseconds, double standardUncertainty) {
    double gain = 1 / (delayVariance + standardUncertainty * standardUncertainty);
    double surprise = microseconds - delayMicroseconds;
    return new Line(
        centreRpm,
        middleDegrees + covariance * gain * surprise,
        delayMicroseconds + delayVariance * gain * surprise,
        middleVariance - covariance * covariance * gain,
        delayVariance - delayVariance * delayVariance * gain,
        covariance - covariance * delayVariance * gain);
  }
}
