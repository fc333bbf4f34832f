package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import toothmark.compare.Change;
import toothmark.compare.Course;
import toothmark.compare.Drift;
import toothmark.compare.RecordedExamination;
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
    List<String> labels = drift.labels();
    for (int i = 0; i < labels.size(); i++) {
      RecordedExamination e = drift.visits().get(i).examination();
      lines.add(labels.get(i) + "  " + e.name() + ": " + e.verdict());
    }
    lines.add(order(drift));
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

  /** By what the examinations were put in order. */
  static String order(Drift drift) {
    List<String> parts = new ArrayList<>();
    drift.visits().stream()
        .map(v -> v.when().source())
        .distinct()
        .sorted()
        .forEach(s -> parts.add(Wording.of("drift.when." + Wording.lower(s))));
    if (!drift.isTimed()) {
      parts.add(Wording.of("drift.when.tied"));
    }
    return String.join(" ", parts);
  }

  /** Whether a figure moved, and by how much from first to last. */
  static String outcome(Course course) {
    Optional<Change> overall = course.overall();
    if (overall.isEmpty()) {
      return Wording.of("drift.once");
    }
    String by = Say.interval(overall.get().difference().orElseThrow(), course.unit());
    boolean back = overall.get().verdict() == Change.Verdict.WITHIN_UNCERTAINTY;
    return Wording.of(
        course.moved() ? back ? "drift.moved.back" : "drift.moved" : "drift.still", by);
  }

  private static String when(Drift drift, RecordedFinding finding) {
    List<String> labels = drift.labels();
    List<String> dates =
        IntStream.range(0, labels.size())
            .filter(i -> has(drift.visits().get(i), finding))
            .mapToObj(labels::get)
            .toList();
    return dates.size() == drift.visits().size()
        ? Wording.of("drift.always")
        : "(" + String.join(", ", dates) + ")";
  }

  static boolean has(Visit visit, RecordedFinding finding) {
    return visit.examination().findings().stream().anyMatch(f -> f.id().equals(finding.id()));
  }
}
