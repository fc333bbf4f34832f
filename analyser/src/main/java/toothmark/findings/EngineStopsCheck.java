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
        Draft.of(id(), Severity.NOTE)
            .title("stops-at", Say.at(end))
            .probability(0.9)
            .saw("last-tooth", Say.rpm(turns.rpmAt(end)))
            .ratherThan("open-wire")
            .caution("turning")
            .picture(Picture.SPEED));
  }
}
