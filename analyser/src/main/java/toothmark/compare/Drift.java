package toothmark.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import toothmark.units.Measured;

/**
 * Several examinations of one job, by date.
 *
 * @param visits by date
 * @param courses each figure that any of them has, in the order of the examinations
 * @param findings each finding that any of them has, as the last one that has it puts it
 */
public record Drift(List<Visit> visits, List<Course> courses, List<RecordedFinding> findings) {

  /** Copies the lists. */
  public Drift {
    visits = List.copyOf(visits);
    courses = List.copyOf(courses);
    findings = List.copyOf(findings);
  }

  /**
   * Puts examinations in order and follows each figure.
   *
   * @param visits two or more; of one date in the order given
   * @return what moved over time
   */
  public static Drift of(List<Visit> visits) {
    List<Visit> ordered = new ArrayList<>(visits);
    ordered.sort(Comparator.comparing(Visit::date));
    Map<String, String> units = new LinkedHashMap<>();
    Map<String, RecordedFinding> findings = new LinkedHashMap<>();
    for (Visit v : ordered) {
      v.examination().figures().forEach(f -> units.putIfAbsent(f.name(), f.unit()));
      v.examination().findings().forEach(f -> findings.put(f.id(), f));
    }
    List<Course> courses = new ArrayList<>();
    units.forEach((name, unit) -> courses.add(course(name, unit, ordered)));
    courses.removeIf(Drift::nothingEverCame);
    return new Drift(ordered, courses, List.copyOf(findings.values()));
  }

  private static Course course(String name, String unit, List<Visit> visits) {
    List<Optional<Measured>> values = new ArrayList<>();
    for (Visit v : visits) {
      values.add(v.examination().figure(name).map(RecordedFigure::value));
    }
    return new Course(name, unit, values);
  }

  private static boolean nothingEverCame(Course c) {
    return c.values().stream().allMatch(v -> v.map(m -> m.value() == 0).orElse(true));
  }
}
