package toothmark.findings;

import java.util.List;

/** The starter motor disturbs the crank signal. */
final class StarterNoiseCheck extends CrankCheck {

  private static final int PROVEN = 8;

  @Override
  public String id() {
    return StraySources.STARTER;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (StraySources.crankingSeconds(crank.turns()) <= 0) {
      return Outcome.cannotRun("The capture holds no cranking.");
    }
    List<Stray> own = crank.strays().of(id());
    if (own.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                own.size() >= PROVEN ? Severity.FAULT : Severity.WATCH,
                "The starter disturbs the crank signal.")
            .probability(crank.strays().part(id()).orElseThrow().probability())
            .saw(
                Words.count(own.size(), "extra edge comes", "extra edges come")
                    + " while the starter turns the engine, and they stop when it runs.")
            .ratherThan("A weak sensor loses teeth while cranking; here edges are added.")
            .next("Move the sensor lead away from the starter cable and check the engine's ground.")
            .caution(Cautions.STARTER)
            .picture(Picture.SYNC)
            .where(IgnitionInterferenceCheck.spans(own)));
  }
}
