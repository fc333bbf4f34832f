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
      return Outcome.cannotRun(DwellView.NO_DWELL);
    }
    DwellView d = dwell.get();
    if (d.spread() < WATCH_SPREAD || d.duty() > 0.6) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The coils' charging time is unsteady.")
            .probability(0.75)
            .saw(
                "Two thirds of the charging times lie within "
                    + Say.percent(d.spread())
                    + " of "
                    + Say.seconds(d.medianSeconds())
                    + "; a tenth is usual.")
            .against("A strong change of speed or of battery voltage in the capture does this too.")
            .ratherThan("A few odd charges do not widen the middle two thirds.")
            .next("Record at a steady speed with the battery voltage beside it.")
            .caution(Cautions.HIGH_VOLTAGE)
            .picture(Picture.DWELL));
  }
}
