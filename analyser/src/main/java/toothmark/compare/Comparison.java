package toothmark.compare;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
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
}
