package toothmark.findings;

import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.units.Say;

/** The controller times the unsteadier edge of a switching sensor. */
final class WrongTimingEdgeCheck extends CrankCheck {

  /** Times the timed edge must jitter as much as the other one. */
  private static final double RATIO = 2;

  /**
   * Least jitter that matters, degrees: half the 0.2 degrees or so that a self-calibrating Hall
   * switch is allowed (0.4 to 0.5 typical from peak to peak; ATS673 data sheet).
   */
  private static final double MATTERS_DEGREES = 0.1;

  @Override
  public String id() {
    return "wrong-timing-edge";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.edges().kind() != SensorKind.HALL) {
      return Outcome.cannotRun("Only a switching sensor has two edges to choose from.");
    }
    double pitch = crank.turns().pattern().pitchDegrees();
    EdgeDirection timed = seen.stated().timedEdge();
    double own = pitch * EdgeScatter.pitches(seen.edges().train(timed));
    double other = pitch * EdgeScatter.pitches(seen.edges().train(timed.opposite()));
    if (own < MATTERS_DEGREES || own < RATIO * other || other <= 0) {
      return Outcome.quiet();
    }
    String name = timed == EdgeDirection.FALLING ? "falling" : "rising";
    String better = timed == EdgeDirection.FALLING ? "rising" : "falling";
    return Outcome.fires(
        Draft.of(id(), Severity.FAULT, "The controller times the unsteadier edge of the sensor.")
            .probability(0.96)
            .saw(
                "The "
                    + name
                    + " edge that it times jitters by "
                    + Say.degrees(own)
                    + ", the "
                    + better
                    + " one by "
                    + Say.degrees(other)
                    + " (standard deviation).")
            .ratherThan("A swapped two-wire sensor would split the gap in two; here it is whole.")
            .next(
                "Set the controller to the "
                    + better
                    + " edge, then check the timing with a light: it moves by the width of a tooth.")
            .caution(Cautions.ADVANCE + " Do not trim it away with the angle setting instead.")
            .picture(Picture.WAVEFORM));
  }
}
