package toothmark.findings;

import java.util.Optional;
import toothmark.units.Say;

/** The charging time jumps about. */
final class DwellUnsteadyCheck implements Check {

  /** Spread as a share of the dwell that voltage and speed do not explain in one capture. */
  private static final double WATCH_SPREAD = 0.25;

  private static final int FEWEST = 12;

  @Override
  public String id() {
    return "dwell-unsteady";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<DwellView> dwell = DwellView.of(symptoms.seen());
    if (dwell.isEmpty() || dwell.get().sparks() < FEWEST) {
      return Outcome.cannotRun("no-dwell");
    }
    DwellView d = dwell.get();
    if (d.spread() < WATCH_SPREAD || d.duty() > 0.6) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.75)
            .saw("spread", Say.percent(d.spread()), Say.seconds(d.medianSeconds()))
            .against("speed-changes")
            .ratherThan("few-odd")
            .caution("high-voltage")
            .picture(Picture.DWELL));
  }
}
