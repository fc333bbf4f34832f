package toothmark.findings;

import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.timing.Alignment;
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

  /** Two edges agree with a width when they lie this near, in pitches. */
  private static final double SLACK = 0.06;

  @Override
  public String id() {
    return "wrong-timing-edge";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.edges().kind() != SensorKind.HALL) {
      return Outcome.cannotRun("one-edge");
    }
    EdgeDirection timed = timed(seen);
    double pitch = crank.turns().pattern().pitchDegrees();
    int teeth = crank.turns().pattern().teeth();
    double own = pitch * EdgeScatter.pitches(seen.edges().train(timed), teeth);
    double other = pitch * EdgeScatter.pitches(seen.edges().train(timed.opposite()), teeth);
    if (own < MATTERS_DEGREES || own < RATIO * other || other <= 0) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(seen, timed, own, other).picture(Picture.WAVEFORM));
  }

  private Draft draft(Observations seen, EdgeDirection timed, double own, double other) {
    boolean stated = seen.stated().edgeStated() == Observations.Statement.STATED;
    boolean moved = byAToothWidth(seen);
    boolean falling = timed == EdgeDirection.FALLING;
    Draft d =
        Draft.of(id(), stated || moved ? Severity.FAULT : Severity.WATCH)
            .probability(stated || moved ? 0.96 : 0.7)
            .saw(
                falling ? "falling-jitters" : "rising-jitters",
                Say.degrees(own),
                Say.degrees(other));
    d.sawIf(moved, "tooth-width");
    if (!stated) {
      d.against("edge-assumed");
    }
    return d.ratherThan("swapped-wires")
        .next(falling ? "set-rising" : "set-falling")
        .caution("advance", "not-trimmed");
  }

  /** The edge that the controller is taken to time: falling where the job sheet names none. */
  private static EdgeDirection timed(Observations seen) {
    return seen.stated().edgeStated() == Observations.Statement.STATED
        ? seen.stated().timedEdge()
        : EdgeDirection.FALLING;
  }

  /** Whether the error of the tooth 1 angle is that from one edge of a tooth to the other. */
  static boolean byAToothWidth(Observations seen) {
    if (seen.edges().kind() != SensorKind.HALL || seen.crank().isEmpty()) {
      return false;
    }
    double pitch = seen.crank().get().wheel().pattern().pitchDegrees();
    double width = EdgeScatter.pulse(seen.edges().falling(), seen.edges().rising());
    return seen.timing()
        .alignment()
        .flatMap(Alignment::errorDegrees)
        .filter(e -> e.standardUncertainty() < SLACK * pitch)
        .map(e -> Math.abs(e.value()) / pitch)
        .filter(e -> Math.abs(e - width) < SLACK || Math.abs(e - (1 - width)) < SLACK)
        .isPresent();
  }
}
