package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.compare.Change;
import toothmark.compare.Course;
import toothmark.compare.Drift;
import toothmark.compare.RecordedFinding;
import toothmark.compare.Visit;
import toothmark.units.Say;

/** A drift in plain lines, for a terminal; its phrases serve the page as well. */
public final class DriftText {

  private DriftText() {}

  /**
   * Says what moved.
   *
   * @param drift several examinations
   * @return lines: the verdict, the examinations, each figure, and when each finding was there
   */
  public static List<String> of(Drift drift) {
    List<String> lines = new ArrayList<>();
    lines.add(verdict(drift));
    lines.add("");
    for (Visit v : drift.visits()) {
      lines.add(v.date() + "  " + v.examination().name() + ": " + v.examination().verdict());
    }
    lines.add("");
    for (Course c : drift.courses()) {
      lines.add(String.format("%-22s  %s", c.name(), outcome(c)));
    }
    for (RecordedFinding f : drift.findings()) {
      lines.add(
          String.format("%-6s %s %s", Wording.severity(f.severity()), f.title(), when(drift, f)));
    }
    return lines.stream().map(ScreenLines::plainSpaces).toList();
  }

  /**
   * What moved, in a sentence or two.
   *
   * @param drift several examinations
   * @return the figures that moved, and whether all captures show one wheel
   */
  public static String verdict(Drift drift) {
    List<String> moved = drift.courses().stream().filter(Course::moved).map(Course::name).toList();
    int n = drift.visits().size();
    String verdict =
        moved.isEmpty()
            ? Wording.of("drift.verdict.none", n)
            : Wording.of("drift.verdict", String.join(", ", moved).toLowerCase(Locale.ROOT), n);
    long wheels = drift.visits().stream().map(v -> v.examination().wheel()).distinct().count();
    return wheels > 1 ? verdict + " " + Wording.of("drift.wheels") : verdict;
  }

  /** Whether a figure moved, and by how much from first to last. */
  static String outcome(Course course) {
    Optional<Change> overall = course.overall();
    if (overall.isEmpty()) {
      return Wording.of("drift.once");
    }
    String by = Say.interval(overall.get().difference().orElseThrow(), course.unit());
    return Wording.of(course.moved() ? "drift.moved" : "drift.still", by);
  }

  private static String when(Drift drift, RecordedFinding finding) {
    List<String> dates =
        drift.visits().stream()
            .filter(v -> has(v, finding))
            .map(v -> v.date().toString())
            .distinct()
            .toList();
    return dates.size() == drift.visits().size()
        ? Wording.of("drift.always")
        : "(" + String.join(", ", dates) + ")";
  }

  static boolean has(Visit visit, RecordedFinding finding) {
    return visit.examination().findings().stream().anyMatch(f -> f.id().equals(finding.id()));
  }
}
