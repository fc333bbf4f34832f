package toothmark.findings;

import toothmark.units.Say;

/** The engine stops within the capture. */
final class EngineStopsCheck extends CrankCheck {

  @Override
  public String id() {
    return "engine-stops";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (!crank.stalls(seen)) {
      return Outcome.quiet();
    }
    Turns turns = crank.turns();
    double end = turns.time(turns.teeth() - 1);
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE, "The engine stops at " + Say.at(end) + ".")
            .probability(0.9)
            .saw(
                "The speed falls to "
                    + Say.rpm(turns.rpmAt(end))
                    + " at the last tooth; a sensor of this kind gives nothing at standstill.")
            .ratherThan("A wire that opens ends the signal at speed.")
            .next("If it was not switched off, look at what happened just before.")
            .caution(Cautions.TURNING)
            .picture(Picture.SPEED));
  }
}
