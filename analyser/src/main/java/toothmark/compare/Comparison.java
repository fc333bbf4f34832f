package toothmark.compare;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Stream;

/**
 * Two examinations side by side.
 *
 * @param before the earlier
 * @param after the later
 * @param changes each figure that either has, in the order of the examinations
 */
public record Comparison(
    RecordedExamination before, RecordedExamination after, List<Change> changes) {

  /** Copies the list. */
  public Comparison {
    changes = List.copyOf(changes);
  }

  /**
   * Compares.
   *
   * @param before the earlier examination
   * @param after the later
   * @return what changed
   */
  public static Comparison of(RecordedExamination before, RecordedExamination after) {
    return new Comparison(before, after, changes(before, after));
  }

  /**
   * Findings that went.
   *
   * @return those of the earlier that the later has not
   */
  public List<RecordedFinding> gone() {
    return before.findings().stream().filter(f -> after.gravest(f.id()).isEmpty()).toList();
  }

  /**
   * Findings that came.
   *
   * @return those of the later that the earlier has not
   */
  public List<RecordedFinding> come() {
    return after.findings().stream().filter(f -> before.gravest(f.id()).isEmpty()).toList();
  }

  /**
   * Findings of both that became graver, as a watch that is now a fault.
   *
   * @return as the later puts them
   */
  public List<RecordedFinding> graver() {
    return both((then, f) -> f.grade() < then.grade());
  }

  /**
   * Findings of both that became milder.
   *
   * @return as the later puts them
   */
  public List<RecordedFinding> milder() {
    return both((then, f) -> after.gravest(f.id()).orElseThrow().grade() > then.grade());
  }

  /**
   * Findings of both that are as grave as before.
   *
   * @return as the later puts them
   */
  public List<RecordedFinding> stayed() {
    List<RecordedFinding> regraded = new ArrayList<>(graver());
    regraded.addAll(milder());
    return both((then, f) -> !regraded.contains(f));
  }

  private List<RecordedFinding> both(BiPredicate<RecordedFinding, RecordedFinding> kept) {
    return after.findings().stream()
        .filter(f -> before.gravest(f.id()).filter(then -> kept.test(then, f)).isPresent())
        .toList();
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
    parts.add(counted(gone()) + " gone, " + counted(come()).toLowerCase(Locale.ROOT) + " new.");
    long became = graver().stream().filter(Comparison::fault).count();
    if (became > 0) {
      parts.add(became + (became == 1 ? " finding is" : " findings are") + " now a fault.");
    }
    long eased = milder().stream().filter(f -> fault(before.gravest(f.id()).orElseThrow())).count();
    if (eased > 0) {
      parts.add(eased + (eased == 1 ? " fault is" : " faults are") + " milder now.");
    }
    long stay = stayed().stream().filter(Comparison::fault).count();
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
