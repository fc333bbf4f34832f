package toothmark.findings;

import java.util.Optional;
import toothmark.units.Say;

/** Coils charge too briefly for a strong spark. */
final class DwellShortCheck implements Check {

  /**
   * To mend, s. Usual is 2 to 4 ms at 14 V (common practice, no source); a coil of 3.5 mH and 0.6
   * ohm then holds under half of the energy that it has after 2.2 ms, by i = V/R (1 - exp(-R t/L)).
   */
  private static final double FAULT_SECONDS = 1.5e-3;

  private static final double WATCH_SECONDS = 1.8e-3;

  /** Above this duty there is no time to charge longer, which is the engine's doing. */
  private static final double NO_TIME = 0.6;

  @Override
  public String id() {
    return "dwell-short";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<DwellView> dwell = DwellView.of(symptoms.seen());
    if (dwell.isEmpty()) {
      return Outcome.cannotRun("no-dwell");
    }
    DwellView d = dwell.get();
    if (d.medianSeconds() > WATCH_SECONDS || d.duty() > NO_TIME) {
      return Outcome.quiet();
    }
    boolean proven = d.medianSeconds() < FAULT_SECONDS;
    return Outcome.fires(
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(proven ? 0.9 : 0.6)
            .saw(d.sparks(), "dwell", Say.seconds(d.medianSeconds()))
            .against("low-inductance")
            .ratherThan("no-time", Say.percent(d.duty()))
            .caution("voltage-drop", "high-voltage")
            .picture(Picture.DWELL));
  }
}
