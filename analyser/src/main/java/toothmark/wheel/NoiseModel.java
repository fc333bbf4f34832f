package toothmark.wheel;

/**
 * What is taken for granted of edges before a wheel is assumed.
 *
 * <p>All rates and deviations are per local edge interval, a quantity of the data alone: a noise
 * that scaled with the assumed pitch would favour wheels with a finer one.
 *
 * @param jitter standard deviation of a tooth's place, in edge intervals (the edge's own time
 *     uncertainty comes on top)
 * @param roughness standard deviation of the change of log pace over an edge interval, at the
 *     reference interval
 * @param referenceInterval s; the roughness grows with the square of the interval, as a given
 *     torque changes the speed by 1/n² (dλ/dθ = −α/ω²)
 * @param strayNats cost of an edge that is no tooth
 * @param lossNats cost of the first tooth of a run that gave no edge
 * @param lossGrowth further cost of a run of m lost teeth, times ln m
 */
record NoiseModel(
    double jitter,
    double roughness,
    double referenceInterval,
    double strayNats,
    double lossNats,
    double lossGrowth) {

  private static final double LOWEST = 1.0 / 64;
  private static final double MOST = 0.35;
  private static final double LEAST = 2e-4;

  NoiseModel withMotion(double newJitter, double newRoughness) {
    return new NoiseModel(
        newJitter, newRoughness, referenceInterval, strayNats, lossNats, lossGrowth);
  }

  NoiseModel withRates(double newStrayNats, double newLossNats) {
    return new NoiseModel(
        jitter, roughness, referenceInterval, newStrayNats, newLossNats, lossGrowth);
  }

  NoiseModel withLossGrowth(double newLossGrowth) {
    return new NoiseModel(jitter, roughness, referenceInterval, strayNats, lossNats, newLossGrowth);
  }

  /**
   * Roughness at another speed.
   *
   * @param interval local edge interval, s
   * @return standard deviation of the slope
   */
  double roughnessAt(double interval) {
    double r = interval / referenceInterval;
    return Math.max(LEAST, Math.min(MOST, roughness * Math.max(LOWEST, r * r)));
  }
}
