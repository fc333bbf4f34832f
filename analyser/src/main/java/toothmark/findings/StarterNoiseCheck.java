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
      return Outcome.cannotRun("no-cranking");
    }
    List<Stray> own = crank.strays().of(id());
    if (own.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), own.size() >= PROVEN ? Severity.FAULT : Severity.WATCH)
            .probability(crank.strays().part(id()).orElseThrow().probability())
            .saw(own.size(), "edges")
            .ratherThan("weak-sensor")
            .caution("starter")
            .picture(Picture.SYNC)
            .where(IgnitionInterferenceCheck.spans(own)));
  }
}
