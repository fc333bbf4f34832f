package toothmark.wheel;

/**
 * How improbable it is that a tooth passes so much later than predicted.
 *
 * <p>Nearly always the lateness is normal with the predicted variance. Some teeth stand a little
 * out of place (those beside a gap pass up to 2 % of a pitch away from it, since the flux of the
 * missing neighbour is not there), a few far out. The least costly of the three stands for their
 * sum. Lateness is in local edge intervals, cost in nats.
 */
final class Lateness {

  /** Variance added for a tooth far out of place. */
  static final double WIDE = 0.04;

  /** Teeth further off than this cost more than to call them strays. */
  static final double REACH = 0.64;

  private static final double LITTLE = 0.03 * 0.03;
  private static final double LITTLE_SHARE = 0.1;
  private static final double WIDE_SHARE = 0.03;
  private static final double HALF_LOG_2PI = 0.5 * Math.log(2 * Math.PI);
  private static final double CORE_NATS = HALF_LOG_2PI - Math.log(1 - LITTLE_SHARE - WIDE_SHARE);
  private static final double LITTLE_NATS = HALF_LOG_2PI - Math.log(LITTLE_SHARE);
  private static final double WIDE_NATS = HALF_LOG_2PI - Math.log(WIDE_SHARE);

  /** Whatever the variance, teeth that are a little out of place cost no less. */
  private static final double LEAST_NATS = LITTLE_NATS + 0.5 * Math.log(LITTLE);

  private double variance;
  private double core;
  private double coreWeight;
  private boolean othersKnown;
  private double little;
  private double littleWeight;
  private double wide;
  private double wideWeight;

  /**
   * Sets the variance.
   *
   * @param variance of the prediction and the tooth's jitter
   */
  void of(double variance) {
    this.variance = variance;
    core = CORE_NATS + 0.5 * Math.log(variance);
    coreWeight = 0.5 / variance;
    othersKnown = false;
  }

  private void learnOthers() {
    little = LITTLE_NATS + 0.5 * Math.log(variance + LITTLE);
    littleWeight = 0.5 / (variance + LITTLE);
    wide = WIDE_NATS + 0.5 * Math.log(variance + WIDE);
    wideWeight = 0.5 / (variance + WIDE);
    othersKnown = true;
  }

  /** Cost of that lateness. */
  double nats(double late) {
    double x = late * late;
    double c = core + coreWeight * x;
    if (c <= LEAST_NATS) {
      return c;
    }
    if (!othersKnown) {
      learnOthers();
    }
    double l = little + littleWeight * x;
    double w = wide + wideWeight * x;
    double other = l < w ? l : w;
    return c < other ? c : other;
  }

  /** Variance that the tooth's place has beside the usual, by the likeliest of the three. */
  double spread(double late) {
    double x = late * late;
    double c = core + coreWeight * x;
    if (c <= LEAST_NATS) {
      return 0;
    }
    if (!othersKnown) {
      learnOthers();
    }
    double l = little + littleWeight * x;
    double w = wide + wideWeight * x;
    return c <= l && c <= w ? 0 : l <= w ? LITTLE : WIDE;
  }
}
