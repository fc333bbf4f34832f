package toothmark.accuracy.diagnosis;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.InMemory;
import toothmark.findings.Finding;
import toothmark.findings.Severity;
import toothmark.simulator.SimulatedCapture;

/**
 * What was said of one capture.
 *
 * @param name of the case
 * @param wanted ids that are true
 * @param top the first finding, notes that nobody asked for left out; a dash when there is none
 * @param missed ids that are true and were not found
 * @param falseFaults ids given as faults that are neither true nor fair to say
 * @param words all findings with their severities
 */
record Diagnosed(
    CaseName name,
    List<String> wanted,
    String top,
    List<String> missed,
    List<String> falseFaults,
    String words) {

  /** Stands where nothing was said, or nothing is wrong. */
  static final String NOTHING = "–";

  static Diagnosed of(CaseName name, SimulatedCapture capture) {
    List<String> wanted = capture.truth().faults();
    Set<String> fair = new HashSet<>(capture.scenario().fairFindings());
    List<Finding> found;
    try {
      found = InMemory.examine(capture).diagnosis().findings();
    } catch (RuntimeException e) { // a chain that breaks has found nothing
      return new Diagnosed(name, wanted, "failure", wanted, List.of("failure"), e.toString());
    }
    List<Finding> told =
        found.stream()
            .filter(f -> f.severity() != Severity.NOTE || wanted.contains(f.id()))
            .toList();
    List<String> ids = told.stream().map(Finding::id).toList();
    return new Diagnosed(
        name,
        wanted,
        ids.isEmpty() ? NOTHING : ids.get(0),
        wanted.stream().filter(id -> !ids.contains(id)).toList(),
        found.stream()
            .filter(f -> f.severity() == Severity.FAULT)
            .map(Finding::id)
            .filter(id -> !wanted.contains(id) && !fair.contains(id))
            .toList(),
        String.join(
            ", ",
            found.stream()
                .map(f -> f.id() + " " + f.severity().name().toLowerCase(java.util.Locale.ROOT))
                .toList()));
  }

  boolean topRight() {
    return wanted.contains(top);
  }

  String summary() {
    return "true " + wanted + ", said [" + words + "]";
  }
}
