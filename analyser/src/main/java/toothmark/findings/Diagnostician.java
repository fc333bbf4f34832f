package toothmark.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Runs every check, lets causes explain their consequences, and puts the rest in order.
 *
 * <p>The reasoning is described in {@code docs/methods/diagnosis.md}.
 */
public final class Diagnostician {

  private static final double SURE = 0.85;
  private static final double LIKELY = 0.65;

  private Diagnostician() {}

  /**
   * Finds what is wrong.
   *
   * @param seen what the earlier stages found
   * @return the findings by rank, and what could not be examined
   */
  public static Diagnosis diagnose(Observations seen) {
    Symptoms symptoms = new Symptoms(seen);
    List<Finding> findings = new ArrayList<>();
    List<NotExamined> notExamined = new ArrayList<>();
    for (Check check : Catalogue.CHECKS) {
      Outcome outcome = check.examine(symptoms);
      outcome.finding().map(f -> WheelDoubt.weigh(f, symptoms)).ifPresent(findings::add);
      if (!outcome.reason().isEmpty()) {
        notExamined.add(new NotExamined(check.id(), outcome.reason()));
      }
    }
    List<Finding> causes = Consequences.explain(findings);
    causes.sort(Comparator.comparing(Finding::severity).thenComparing(Diagnostician::band));
    List<String> lossCauses = syncCauses(symptoms, causes);
    if (!lossCauses.contains(CrankingLossesCheck.ID) && !lossCauses.contains("")) {
      causes.removeIf(f -> f.id().equals(CrankingLossesCheck.ID));
    }
    return new Diagnosis(
        Conclusion.verdict(causes, symptoms),
        Conclusion.nextStep(causes),
        causes,
        notExamined,
        lossCauses);
  }

  /**
   * How sure a finding is, roughly: 0 for sure. Within a band the order of the catalogue stands,
   * which asks for the capture before the signal, the wheel and the spark.
   */
  private static int band(Finding f) {
    return f.probability() >= SURE ? 0 : f.probability() >= LIKELY ? 1 : 2;
  }

  /** A cause that was not found itself explains nothing. */
  private static List<String> syncCauses(Symptoms symptoms, List<Finding> findings) {
    List<String> ids = findings.stream().map(Finding::id).toList();
    return symptoms
        .crank()
        .map(
            c ->
                SyncCauses.of(symptoms.seen(), c).stream()
                    .map(id -> Consequences.toldBy(id, ids))
                    .toList())
        .orElseGet(() -> symptoms.seen().receiver().losses().stream().map(l -> "").toList());
  }
}
