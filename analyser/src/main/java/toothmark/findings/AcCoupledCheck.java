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
        Draft.of(id(), Severity.WATCH, "The crank channel is AC-coupled: its levels float.")
            .probability(0.9)
            .saw(
                "It switches between "
                    + Words.height(q.low(), seen)
                    + " and "
                    + Words.height(q.high(), seen)
                    + ", with a mean of "
                    + Words.height(q.offset(), seen)
                    + "; a switch rests on ground and goes up from there.")
            .saw("Times hold where the levels are far apart; the levels themselves say nothing.")
            .against("An output stage with a negative supply shows the same.")
            .ratherThan("Swapped probe leads would leave the upper level at zero.")
            .ratherThan("A bad ground lifts both levels; it does not push one below zero.")
            .next("Set the channel to DC coupling and record again before judging its levels.")
            .caution(Cautions.TURNING)
            .picture(Picture.WAVEFORM));
  }
}
