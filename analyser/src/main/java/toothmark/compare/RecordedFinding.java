package toothmark.compare;

import java.util.List;
import java.util.stream.Stream;
import toothmark.findings.Severity;

/**
 * A finding as a result file holds it.
 *
 * @param id lower-case words joined by hyphens
 * @param severity "fault", "watch" or "note"
 * @param title one sentence
 */
public record RecordedFinding(String id, String severity, String title) {

  /** Place of the severity among all; the smaller the graver. */
  int grade() {
    List<String> labels = Stream.of(Severity.values()).map(Severity::label).toList();
    return labels.contains(severity) ? labels.indexOf(severity) : labels.size();
  }
}
