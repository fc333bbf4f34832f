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
        Draft.of(
                id(),
                own.size() >= PROVEN ? Severity.FAULT : Severity.WATCH,
                "Noise makes extra edges in the wheel's gap.")
            .probability(crank.strays().part(id()).orElseThrow().probability())
            .saw(
                Words.count(own.size(), "extra edge falls", "extra edges fall")
                    + " in the gap and none elsewhere.")
            .ratherThan("General noise would also fall between teeth.")
            .next(
                "Close the air gap a little, or raise the arming level of the sensor's input; then"
                    + " record while cranking.")
            .caution("A higher arming level may lose teeth while cranking: check both.")
            .picture(Picture.WAVEFORM)
            .where(IgnitionInterferenceCheck.spans(own)));
  }
}
