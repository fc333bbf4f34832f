package toothmark.findings;

import java.util.Optional;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDirection;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.units.Measured;
import toothmark.units.Say;

/** The sensor's zero moves with the current of the coils: they share a ground. */
final class GroundShiftCheck extends CrankCheck {

  /** Movement of a tooth that matters, degrees: as of a hum. */
  private static final double WATCH_DEGREES = 0.08;

  private static final double FAULT_DEGREES = 0.2;

  /** From this share of a tooth's height on an input stage may miss it: it arms at a third. */
  private static final double FAULT_SHARE = 0.33;

  @Override
  public String id() {
    return "ground-shift";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    CrankEdges edges = seen.edges();
    if (edges.kind() != SensorKind.VARIABLE_RELUCTANCE) {
      return Outcome.cannotRun("no-zero");
    }
    EdgeDirection tooth = crank.turns().crank().identification().toothEdge();
    EdgeTrain other =
        edges.train(tooth == EdgeDirection.FALLING ? EdgeDirection.RISING : EdgeDirection.FALLING);
    Optional<GroundShift> shift = GroundShift.of(crank.turns(), edges.train(tooth), other, seen);
    if (shift.isEmpty() || !crank.severalSpeeds()) {
      return Outcome.cannotRun("few-charges");
    }
    GroundShift s = shift.get();
    double sure = Math.abs(s.volts().value()) - 3 * s.volts().standardUncertainty();
    double degrees = moves(sure, s, crank);
    return degrees < WATCH_DEGREES ? Outcome.quiet() : Outcome.fires(draft(seen, s, sure, crank));
  }

  /** How far a shift moves the slowest tooth: asin(shift / height) / N, as a hum does. */
  private static double moves(double shift, GroundShift s, CrankSymptoms crank) {
    double share = Math.max(-1, Math.min(1, shift / s.leastHeight()));
    return Math.toDegrees(Math.asin(share)) / crank.turns().pattern().slots();
  }

  private Draft draft(Observations seen, GroundShift s, double sure, CrankSymptoms crank) {
    Measured size = new Measured(Math.abs(s.volts().value()), s.volts().standardUncertainty());
    boolean strong = moves(sure, s, crank) >= FAULT_DEGREES || sure > FAULT_SHARE * s.leastHeight();
    return Draft.of(id(), strong ? Severity.FAULT : Severity.WATCH)
        .probability(strong ? 0.9 : 0.7)
        .saw(
            s.volts().value() > 0 ? "higher" : "lower",
            Words.height(size.value(), seen),
            Words.height(Say.EXPAND * size.standardUncertainty(), seen))
        .saw(
            "moves",
            Say.rpm(s.leastRpm()),
            Words.height(s.leastHeight(), seen),
            Say.degrees(moves(size.value(), s, crank)))
        .against("field")
        .ratherThan("sparks")
        .caution("return-wire", "turning")
        .picture(Picture.WAVEFORM);
  }
}
