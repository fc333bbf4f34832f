package toothmark.findings;

import toothmark.units.Say;
import toothmark.wheel.WheelIdentification;

/** More than one wheel fits the capture. */
final class WheelUncertainCheck extends CrankCheck {

  private static final double SURE = 0.9;

  @Override
  public String id() {
    return "wheel-uncertain";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    WheelIdentification found = crank.turns().crank().identification();
    if (found.confidence() >= SURE || found.alternatives().isEmpty()) {
      return Outcome.quiet();
    }
    WheelIdentification.Candidate next = found.alternatives().get(0);
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .title("reads-as", found.pattern())
            .probability(1 - found.confidence())
            .saw(
                "shares",
                found.pattern(),
                Say.percent(found.confidence()),
                next.pattern(),
                Say.percent(next.confidence()))
            .ratherThan("wrong-setting")
            .caution("by-hand")
            .picture(Picture.TOOTH_PERIOD));
  }
}
