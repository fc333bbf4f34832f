package toothmark.findings;

import java.util.List;

/**
 * All that is wrong, explained or not examined.
 *
 * @param verdict one or two sentences
 * @param nextStep what to do next, one sentence; empty when nothing needs doing
 * @param findings by rank, the most important first
 * @param notExamined checks that could not run
 * @param syncLossCauses the finding that explains each sync loss of the receiver, in its order;
 *     empty text where none does
 */
public record Diagnosis(
    String verdict,
    String nextStep,
    List<Finding> findings,
    List<NotExamined> notExamined,
    List<String> syncLossCauses) {

  /** Copies the lists. */
  public Diagnosis {
    findings = List.copyOf(findings);
    notExamined = List.copyOf(notExamined);
    syncLossCauses = List.copyOf(syncLossCauses);
  }
}
