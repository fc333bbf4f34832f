package toothmark.findings;

import java.util.List;
import toothmark.units.Interval;
import toothmark.units.Say;

/** The engine stops, or stands still for a while, within the capture. */
final class EngineStopsCheck extends CrankCheck {

  @Override
  public String id() {
    return "engine-stops";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    Turns turns = crank.turns();
    List<Interval> standstills = turns.crank().wheel().standstills();
    boolean stalls = crank.stalls(seen);
    if (!stalls && standstills.isEmpty()) {
      return Outcome.quiet();
    }
    Draft d = Draft.of(id(), Severity.NOTE).probability(0.9);
    if (stalls) {
      double end = turns.time(turns.teeth() - 1);
      d.title("stops-at", Say.at(end)).saw("last-tooth", Say.rpm(turns.rpmAt(end)));
    } else {
      d.title("stands-still", Words.spans(standstills));
    }
    if (!standstills.isEmpty()) {
      d.saw("counted-anew", Words.spans(standstills)).where(standstills);
    }
    return Outcome.fires(d.ratherThan("open-wire").caution("turning").picture(Picture.SPEED));
  }
}
