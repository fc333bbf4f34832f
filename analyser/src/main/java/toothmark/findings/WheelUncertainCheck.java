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
        Draft.of(
                id(),
                Severity.WATCH,
                "The wheel reads as " + found.pattern() + ", but other wheels fit nearly as well.")
            .probability(1 - found.confidence())
            .saw(
                found.pattern()
                    + " has "
                    + Say.percent(found.confidence())
                    + " of the probability, "
                    + next.pattern()
                    + " "
                    + Say.percent(next.confidence())
                    + ".")
            .ratherThan("A wrong setting in the job sheet would meet one wheel that is sure.")
            .next("Count the slots on the wheel and name the pattern in the job sheet.")
            .caution(Cautions.BY_HAND)
            .picture(Picture.TOOTH_PERIOD));
  }
}
