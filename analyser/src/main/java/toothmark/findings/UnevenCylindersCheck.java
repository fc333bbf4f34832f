package toothmark.findings;

import java.util.List;
import java.util.OptionalDouble;
import toothmark.units.Say;

/** One cylinder pushes less than the others. */
final class UnevenCylindersCheck extends CrankCheck {

  /** Difference of a cylinder's share of the speed worth a look. */
  private static final double WATCH = 0.01;

  @Override
  public String id() {
    return "uneven-cylinders";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.stated().cylinders() < 2) {
      return Outcome.cannotRun("cylinders-unknown");
    }
    Observations.Firing firing = seen.stated().firing();
    if (firing.statement() == Observations.Statement.STATED && firing.order().isEmpty()) {
      return Outcome.cannotRun("fires-unevenly");
    }
    int cylinders = seen.stated().cylinders();
    HalfOrder.Stretch running = HalfOrder.Stretch.longest(crank.turns(), cylinders);
    if (!running.isEnough()) {
      return Outcome.cannotRun("few-cycles");
    }
    HalfOrder h = HalfOrder.ofSpeed(crank.turns(), cylinders, running);
    double doubt = Say.EXPAND * h.uncertainty();
    if (h.difference() - doubt < WATCH) {
      return h.difference() > WATCH && doubt > WATCH
          ? Outcome.cannotRun("speed-wanders", Say.percent(h.difference()), Say.percent(doubt))
          : Outcome.quiet();
    }
    Draft d =
        Draft.of(id(), Severity.WATCH)
            .probability(0.75)
            .saw("differs", Say.percent(h.difference()));
    sayWhich(d, which(seen, crank.turns(), running));
    return Outcome.fires(
        d.ratherThan("wheel-errors").caution("raw-fuel", "plug-lead").picture(Picture.ORDERS));
  }

  private static List<Integer> which(Observations seen, Turns turns, HalfOrder.Stretch running) {
    OptionalDouble tdc = seen.topDeadCentreDegrees();
    return tdc.isEmpty()
        ? List.of()
        : HalfOrder.ofGain(turns, seen.stated().cylinders(), running, tdc.getAsDouble())
            .filter(HalfOrder.Stroke::standsOut)
            .map(s -> Cranking.named(seen, turns, s.tdcDegrees()))
            .orElse(List.of());
  }

  private static void sayWhich(Draft d, List<Integer> cylinders) {
    if (cylinders.isEmpty()) {
      d.next("which-first");
    } else if (cylinders.size() > 1) {
      d.saw("it-is-either", Words.either(cylinders)).next("record-coil");
    } else {
      d.saw("it-is", Words.either(cylinders)).next("look", Words.either(cylinders));
    }
  }
}
