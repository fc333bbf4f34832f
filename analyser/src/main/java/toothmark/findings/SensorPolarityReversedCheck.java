package toothmark.findings;

import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.receiver.SyncLoss;
import toothmark.wheel.Orientation;

/** The controller times the slots instead of the teeth: leads swapped, or the wrong edge set. */
final class SensorPolarityReversedCheck extends CrankCheck {

  @Override
  public String id() {
    return "sensor-polarity-reversed";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.edges().kind() != SensorKind.VARIABLE_RELUCTANCE) {
      return Outcome.cannotRun("no-polarity");
    }
    Orientation orientation = crank.turns().crank().identification().orientation();
    if (orientation != Orientation.REVERSED) {
      return orientation == Orientation.NORMAL
          ? Outcome.quiet()
          : Outcome.cannotRun("no-gap-polarity");
    }
    return Outcome.fires(draft(seen));
  }

  private Draft draft(Observations seen) {
    boolean falling = seen.stated().timedEdge() == EdgeDirection.FALLING;
    int losses = seen.receiver().losses(SyncLoss.Phase.RUNNING);
    return Draft.of(id(), Severity.FAULT)
        .probability(0.99)
        .saw(falling ? "not-falling" : "not-rising")
        .saw("two-intervals")
        .sawIf(losses > 0, "losses", Words.times(losses))
        .ratherThan("lost-tooth")
        .ratherThan("probe")
        .caution("timing-light")
        .picture(Picture.WAVEFORM);
  }
}
