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
        turns.crank().wheel().undecidedTurning().stream()
            .filter(i -> rpmBefore(turns, i) < NEARLY_STILL_RPM)
            .toList();
    if (spans.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.6)
            .saw("slows", Words.spans(spans), Say.rpm(rpmBefore(turns, spans.get(0))))
            .ratherThan("lost-tooth")
            .caution("breaks")
            .picture(Picture.TOOTH_PERIOD)
            .where(spans));
  }

  /** Speed at the last tooth before a span. */
  private static double rpmBefore(Turns turns, Interval span) {
    int tooth = turns.toothBefore(span.startInclusive());
    return tooth < 0 ? Double.POSITIVE_INFINITY : turns.rpmAt(turns.time(tooth));
  }
}
