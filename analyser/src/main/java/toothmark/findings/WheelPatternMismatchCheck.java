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
      return Outcome.cannotRun("no-wheel-told");
    }
    WheelPattern told = seen.stated().pattern().get();
    WheelIdentification found = crank.turns().crank().identification();
    if (told.toString().equals(found.pattern().toString())) {
      return Outcome.quiet();
    }
    boolean sure = found.confidence() >= WheelDoubt.SURE;
    int losses = seen.receiver().losses().size();
    Draft d =
        Draft.of(id(), sure ? Severity.FAULT : Severity.WATCH)
            .title("is-not", found.pattern(), told)
            .probability(found.confidence())
            .saw(
                found.pattern().teeth(),
                "seen",
                found.pattern().slots(),
                Say.percent(found.confidence()));
    d.sawIf(losses > 0, "losses", told, Words.times(losses));
    return Outcome.fires(
        d.ratherThan("swapped-wires")
            .caution("count-slots", "advance")
            .picture(Picture.TOOTH_PERIOD));
  }
}
