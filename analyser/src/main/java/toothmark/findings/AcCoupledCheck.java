package toothmark.findings;

import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;

/** The recorder blocks the direct voltage of a switching sensor. */
final class AcCoupledCheck implements Check {

  /** A switch's low level is ground; this share of its swing below it, it may float. */
  private static final double BELOW_GROUND = 0.15;

  /** What blocks direct voltage leaves no mean; that of a switch with spikes on it stays. */
  private static final double NO_MEAN = 0.05;

  @Override
  public String id() {
    return "ac-coupled";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Observations seen = symptoms.seen();
    SignalQuality q = seen.edges().quality();
    double span = q.high() - q.low();
    double floats = BELOW_GROUND * span;
    boolean sampled = seen.edges().kind() == SensorKind.HALL && q.sampleRateHz() > 0;
    boolean aboutZero = q.low() < -floats && q.high() > floats;
    if (!sampled || !aboutZero || Math.abs(q.offset()) > NO_MEAN * span) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.9)
            .saw(
                "levels",
                Words.height(q.low(), seen),
                Words.height(q.high(), seen),
                Words.height(q.offset(), seen))
            .saw("times")
            .against("negative-supply")
            .ratherThan("swapped-leads")
            .ratherThan("bad-ground")
            .caution("turning")
            .picture(Picture.WAVEFORM));
  }
}
