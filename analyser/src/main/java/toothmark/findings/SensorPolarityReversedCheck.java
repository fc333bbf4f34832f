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
      return Outcome.cannotRun(
          "Only the wave of a variable-reluctance sensor shows which way round it is wired.");
    }
    Orientation orientation = crank.turns().crank().identification().orientation();
    if (orientation != Orientation.REVERSED) {
      return orientation == Orientation.NORMAL
          ? Outcome.quiet()
          : Outcome.cannotRun("The wheel has no gap by which the sensor's polarity would show.");
    }
    return Outcome.fires(draft(seen));
  }

  private Draft draft(Observations seen) {
    String edge = seen.stated().timedEdge() == EdgeDirection.FALLING ? "falling" : "rising";
    int losses = seen.receiver().losses(SyncLoss.Phase.RUNNING);
    return Draft.of(id(), Severity.FAULT, "The crank sensor is wired the wrong way round.")
        .probability(0.99)
        .saw(
            "The steep zero crossing at each tooth goes the other way than the "
                + edge
                + " edge that the controller times.")
        .saw(
            "On that edge the wide slot shows as two long intervals instead of one, so the"
                + " gap is not where the controller looks for it.")
        .sawIf(
            losses > 0,
            "A textbook receiver loses sync "
                + Words.times(losses)
                + " on this signal with the engine running.")
        .ratherThan(
            "A lost tooth gives one long interval at a random place; these come in pairs at"
                + " the same place every turn.")
        .ratherThan(
            "If the controller in fact keeps sync well, the probe was clipped on the wrong way"
                + " round: check it on a known battery voltage first.")
        .next("Swap the two sensor wires at the plug, or the edge in the controller. Record again.")
        .caution(
            "Check the tooth 1 angle with a timing light afterwards: it moves by about half a"
                + " tooth pitch. Where one sensor wire is grounded, change the edge instead;"
                + " swapping would short the signal.")
        .picture(Picture.WAVEFORM);
  }
}
