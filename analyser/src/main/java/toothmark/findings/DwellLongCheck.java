package toothmark.findings;

import java.util.Optional;
import toothmark.ignition.ChargeForm;
import toothmark.units.Say;

/** Coils charge so long that they overheat or run into the next spark. */
final class DwellLongCheck implements Check {

  /** Worth a look, s: the longest usual, for coils of the breaker-points era, is 5 ms. */
  private static final double WATCH_SECONDS = 5.5e-3;

  /** To mend, s: a modern coil is long saturated (its time constant is 3 to 6 ms). */
  private static final double FAULT_SECONDS = 6.5e-3;

  /** Share of the time from spark to spark that leaves none to burn (common practice). */
  private static final double FULL = 0.85;

  @Override
  public String id() {
    return "dwell-long";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<DwellView> dwell = DwellView.of(symptoms.seen());
    if (dwell.isEmpty()) {
      return Outcome.cannotRun("no-dwell");
    }
    DwellView d = dwell.get();
    if (d.medianSeconds() < WATCH_SECONDS && d.duty() < FULL) {
      return Outcome.quiet();
    }
    boolean proven = d.medianSeconds() >= FAULT_SECONDS;
    return Outcome.fires(
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(proven ? 0.92 : 0.7)
            .saw("dwell", Say.seconds(d.medianSeconds()), Say.percent(d.duty()))
            .sawIf(forms(symptoms, ChargeForm.KNEE), "knee")
            .against(forms(symptoms, ChargeForm.LIMITED) ? "limited" : "ballast")
            .ratherThan("few-long")
            .caution("stop-soon")
            .picture(Picture.DWELL));
  }

  private static boolean forms(Symptoms symptoms, ChargeForm form) {
    return symptoms.seen().coils().stream()
        .anyMatch(c -> c.charge().filter(q -> q.form() == form).isPresent());
  }
}
