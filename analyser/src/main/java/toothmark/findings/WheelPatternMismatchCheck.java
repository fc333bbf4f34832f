package toothmark.findings;

import toothmark.units.Say;
import toothmark.wheel.WheelIdentification;
import toothmark.wheel.WheelPattern;

/** The controller is told another wheel than the one that turns. */
final class WheelPatternMismatchCheck extends CrankCheck {

  @Override
  public String id() {
    return "wheel-pattern-mismatch";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.stated().pattern().isEmpty()) {
      return Outcome.cannotRun("The job sheet does not say which wheel the controller is told.");
    }
    WheelPattern told = seen.stated().pattern().get();
    WheelIdentification found = crank.turns().crank().identification();
    if (told.toString().equals(found.pattern().toString())) {
      return Outcome.quiet();
    }
    boolean sure = found.confidence() >= WheelDoubt.SURE;
    int losses = seen.receiver().losses().size();
    Draft d =
        Draft.of(
                id(),
                sure ? Severity.FAULT : Severity.WATCH,
                "The wheel is a " + found.pattern() + ", but the controller is told " + told + ".")
            .probability(found.confidence())
            .saw(
                "The capture shows "
                    + Words.count(found.pattern().teeth(), "tooth", "teeth")
                    + " a turn on "
                    + found.pattern().slots()
                    + " slots, with "
                    + Say.percent(found.confidence())
                    + " confidence.");
    d.sawIf(losses > 0, "A receiver told " + told + " loses sync " + Words.times(losses) + ".");
    return Outcome.fires(
        d.ratherThan("Swapped sensor wires split the gap but keep the count of teeth.")
            .next(
                "Paint tooth 1, count the slots around the wheel with its gaps, and set the"
                    + " controller to that.")
            .caution("Count slots, not teeth: a 36-1 wheel has 35 teeth. " + Cautions.ADVANCE)
            .picture(Picture.TOOTH_PERIOD));
  }
}
