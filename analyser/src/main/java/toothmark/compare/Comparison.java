package toothmark.compare;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Two examinations side by side.
 *
 * @param before the earlier
 * @param after the later
 * @param changes each figure that either has, in the order of the examinations
 * @param gone findings of the earlier that the later has not
 * @param stayed findings of both, as the later puts them
 * @param come findings of the later that the earlier has not
 */
public record Comparison(
    RecordedExamination before,
    RecordedExamination after,
    List<Change> changes,
    List<RecordedFinding> gone,
    List<RecordedFinding> stayed,
    List<RecordedFinding> come) {

  /** Copies the lists. */
  public Comparison {
    changes = List.copyOf(changes);
    gone = List.copyOf(gone);
    stayed = List.copyOf(stayed);
    come = List.copyOf(come);
  }

  /**
   * Compares.
   *
   * @param before the earlier examination
   * @param after the later
   * @return what changed
   */
  public static Comparison of(RecordedExamination before, RecordedExamination after) {
    return new Comparison(
        before,
        after,
        changes(before, after),
        before.findings().stream().filter(f -> !after.has(f.id())).toList(),
        after.findings().stream().filter(f -> before.has(f.id())).toList(),
        after.findings().stream().filter(f -> !before.has(f.id())).toList());
  }

  private static List<Change> changes(RecordedExamination before, RecordedExamination after) {
    Set<String> names = new LinkedHashSet<>();
    before.figures().forEach(f -> names.add(f.name()));
    after.figures().forEach(f -> names.add(f.name()));
    List<Change> changes = new ArrayList<>();
    for (String name : names) {
      Optional<RecordedFigure> b = before.figure(name);
      Optional<RecordedFigure> a = after.figure(name);
      if (Stream.of(b, a).allMatch(f -> f.map(x -> x.value().value() == 0).orElse(false))) {
        continue; // events that never came on either side
      }
      String unit = Stream.of(b, a).flatMap(Optional::stream).findFirst().orElseThrow().unit();
      changes.add(
          new Change(name, unit, b.map(RecordedFigure::value), a.map(RecordedFigure::value)));
    }
    return changes;
  }

  /**
   * The comparison in a sentence or two.
   *
   * @return faults mended, faults that are new, and what changed beyond its uncertainty
   */
  public String verdict() {
    List<String> parts = new ArrayList<>();
    if (!before.wheel().equals(after.wheel())) {
      parts.add(
          "The captures show different wheels, "
              + before.wheel().orElse("none")
              + " and "
              + after.wheel().orElse("none")
              + ".");
    }
    parts.add(counted(gone) + " gone, " + counted(come).toLowerCase(Locale.ROOT) + " new.");
    long stay = stayed.stream().filter(Comparison::fault).count();
    if (stay > 0) {
      parts.add(stay + (stay == 1 ? " fault is" : " faults are") + " still there.");
    }
    return String.join(" ", parts);
  }

  private static String counted(List<RecordedFinding> findings) {
    long n = findings.stream().filter(Comparison::fault).count();
    return n == 0 ? "No fault" : n == 1 ? "One fault" : n + " faults";
  }

  private static boolean fault(RecordedFinding f) {
    return f.severity().equals("fault");
  }
}
