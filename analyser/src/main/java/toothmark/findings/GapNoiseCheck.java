package toothmark.findings;

import java.util.List;

/** Noise crosses zero in the flat of the gap. */
final class GapNoiseCheck extends CrankCheck {

  private static final int PROVEN = 4;

  @Override
  public String id() {
    return StraySources.GAP;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<Stray> own = crank.strays().of(id());
    if (own.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), own.size() >= PROVEN ? Severity.FAULT : Severity.WATCH)
            .probability(crank.strays().part(id()).orElseThrow().probability())
            .saw(own.size(), "edges")
            .ratherThan("general-noise")
            .caution("higher-level")
            .picture(Picture.WAVEFORM)
            .where(IgnitionInterferenceCheck.spans(own)));
  }
}
