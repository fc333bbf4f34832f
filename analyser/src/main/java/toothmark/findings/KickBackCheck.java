package toothmark.findings;

import java.util.List;
import toothmark.units.Interval;
import toothmark.units.Say;

/** The crank turned back at a stop or a failed start. */
final class KickBackCheck extends CrankCheck {

  /** Slower than this next to a stretch that cannot be labelled the crank may turn round. */
  private static final double NEARLY_STILL_RPM = 120;

  @Override
  public String id() {
    return "kick-back";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    Turns turns = crank.turns();
    List<Interval> spans =
        turns.crank().wheel().undecided().stream()
            .filter(i -> turns.covers(i.startInclusive()))
            .filter(i -> turns.rpmAt(i.startInclusive()) < NEARLY_STILL_RPM)
            .toList();
    if (spans.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The crank may have turned backwards.")
            .probability(0.6)
            .saw(
                "At "
                    + Words.spans(spans)
                    + " the crank slows to "
                    + Say.rpm(turns.rpmAt(spans.get(0).startInclusive()))
                    + " and the teeth after it do not follow on.")
            .next("Record a start with a fresh battery and with the base timing checked.")
            .caution("A kick-back can break the starter, or fingers at a hand crank.")
            .picture(Picture.TOOTH_PERIOD)
            .where(spans));
  }
}
