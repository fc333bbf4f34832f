package toothmark.compare;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import toothmark.units.Measured;
import toothmark.units.ShortNames;

/**
 * Several examinations of one job, by time.
 *
 * @param visits by time
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

  private static final Comparator<Visit> BY_TIME =
      Comparator.comparing((Visit v) -> v.when().at())
          .thenComparing(v -> v.examination().name(), ShortNames::compare);

  /**
   * Puts examinations in order and follows each figure.
   *
   * @param visits two or more; where the time of one of a day is not known, all of that day stand
   *     by their names in which numbers count as such
   * @return what moved over time
   */
  public static Drift of(List<Visit> visits) {
    List<Visit> ordered = visits.stream().map(v -> comparable(v, visits)).sorted(BY_TIME).toList();
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

  /** Only the day counts where another of the same day has no more. */
  private static Visit comparable(Visit v, List<Visit> all) {
    LocalDate day = v.when().day();
    boolean timed =
        all.stream()
            .map(Visit::when)
            .filter(w -> w.day().equals(day))
            .allMatch(w -> w.time().isPresent());
    return timed
        ? v
        : new Visit(new When(day, Optional.empty(), v.when().source()), v.examination());
  }

  /**
   * Whether the time tells each examination from the others, so that all have a place in time.
   *
   * @return false where some stand by their names
   */
  public boolean isTimed() {
    return visits.stream().map(v -> v.when().at()).distinct().count() == visits.size();
  }

  /**
   * Where each examination stands between the first and the last.
   *
   * @return from 0 to 1: by time where {@link #isTimed}, else evenly spaced
   */
  public List<Double> places() {
    LocalDateTime first = visits.get(0).when().at();
    double whole = Duration.between(first, visits.get(visits.size() - 1).when().at()).toSeconds();
    List<Double> places = new ArrayList<>();
    for (int i = 0; i < visits.size(); i++) {
      double seconds = Duration.between(first, visits.get(i).when().at()).toSeconds();
      places.add(isTimed() ? seconds / whole : i / (visits.size() - 1.0));
    }
    return places;
  }

  /**
   * A label for each examination that no other bears: its day, with the time where others share the
   * day, else with its number among them.
   *
   * @return in their order
   */
  public List<String> labels() {
    List<String> labels = new ArrayList<>();
    for (Visit v : visits) {
      LocalDate day = v.when().day();
      List<Visit> same = visits.stream().filter(o -> o.when().day().equals(day)).toList();
      labels.add(
          Stream.of("", " HH:mm", " HH:mm:ss")
              .map(p -> DateTimeFormatter.ofPattern("uuuu-MM-dd" + p, Locale.ROOT))
              .filter(f -> isAlone(v, f))
              .findFirst()
              .map(f -> f.format(v.when().at()))
              .orElseGet(() -> day + " (" + (same.indexOf(v) + 1) + ")"));
    }
    return labels;
  }

  private boolean isAlone(Visit v, DateTimeFormatter form) {
    String own = form.format(v.when().at());
    return visits.stream().map(o -> form.format(o.when().at())).filter(own::equals).count() == 1;
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
