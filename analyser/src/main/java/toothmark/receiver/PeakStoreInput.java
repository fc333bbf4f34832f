package toothmark.receiver;

/**
 * An input that stores the positive peak, lets it decay, and arms at a share of it; the next
 * falling zero crossing is the edge.
 *
 * <p>So behaves the LM1815 (data sheet SNOSBU8F, adaptive mode): armed at 80 % of the stored peak,
 * never below a floor of some 45 mV; the store follows a larger peak at once and decays through an
 * outside resistor, so that after one large spike teeth are lost until it has decayed.
 */
final class PeakStoreInput implements InputStage {

  private final double share;
  private final double floorVolts;
  private final double decaySeconds;
  private boolean armed;
  private double stored;
  private double edge;
  private double timeBefore;
  private double before;

  /**
   * Builds a stage.
   *
   * @param share of the stored peak at which it arms
   * @param floorVolts it never arms below this, V
   * @param decaySeconds time constant of the store, s
   */
  PeakStoreInput(double share, double floorVolts, double decaySeconds) {
    this.share = share;
    this.floorVolts = floorVolts;
    this.decaySeconds = decaySeconds;
  }

  @Override
  public Outcome next(double seconds, double volts) {
    Outcome outcome = Outcome.QUIET;
    if (armed && volts <= 0) {
      edge = timeBefore + before / (before - volts) * (seconds - timeBefore);
      armed = false;
      outcome = Outcome.EDGE;
    }
    stored = Math.max(volts, stored * (1 - Math.min(1, (seconds - timeBefore) / decaySeconds)));
    armed = armed || volts > 0 && volts >= Math.max(share * stored, floorVolts);
    timeBefore = seconds;
    before = volts;
    return outcome;
  }

  @Override
  public double edgeSeconds() {
    return edge;
  }
}
