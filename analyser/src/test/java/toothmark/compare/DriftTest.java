package toothmark.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import toothmark.compare.When.Source;
import toothmark.units.Measured;

class DriftTest {

  private static final LocalDate DAY = LocalDate.of(2026, 5, 31);

  private static Visit visit(String name, LocalDate day, String time, double offset) {
    When when = new When(day, Optional.ofNullable(time).map(LocalTime::parse), Source.CAPTURE);
    RecordedFigure figure = new RecordedFigure("Advance offset", "°", new Measured(offset, 0.1));
    return new Visit(
        when,
        new RecordedExamination(
            name,
            Optional.empty(),
            "",
            Optional.of("36-1"),
            Optional.empty(),
            List.of(figure),
            List.of()));
  }

  private static List<String> names(Drift d) {
    return d.visits().stream().map(v -> v.examination().name()).toList();
  }

  @Test
  void examinationsOfOneDayStandByTheirTimes() {
    Drift d =
        Drift.of(
            List.of(
                visit("a", DAY, "17:00", 3),
                visit("b", DAY, "09:00", 1),
                visit("c", DAY, "11:00", 2)));
    assertThat(names(d)).containsExactly("b", "c", "a");
    assertThat(d.isTimed()).isTrue();
    assertThat(d.places()).containsExactly(0.0, 0.25, 1.0);
    assertThat(d.labels())
        .containsExactly("2026-05-31 09:00", "2026-05-31 11:00", "2026-05-31 17:00");
    Measured moved = d.courses().get(0).overall().orElseThrow().difference().orElseThrow();
    assertThat(moved.value()).isEqualTo(2);
  }

  @Test
  void whereATimeIsNotKnownTheDayStandsByNames() {
    Drift d =
        Drift.of(
            List.of(
                visit("run-10", DAY, "09:00", 3),
                visit("run-9", DAY, null, 2),
                visit("later", DAY.plusDays(1), "08:00", 4),
                visit("run-1", DAY, "17:00", 1)));
    assertThat(names(d)).containsExactly("run-1", "run-9", "run-10", "later");
    assertThat(d.isTimed()).isFalse();
    assertThat(d.places()).containsExactly(0.0, 1 / 3.0, 2 / 3.0, 1.0);
    assertThat(d.labels())
        .containsExactly("2026-05-31 (1)", "2026-05-31 (2)", "2026-05-31 (3)", "2026-06-01");
  }

  @Test
  void daysAloneArePlacesInTimeToo() {
    Drift d =
        Drift.of(Stream.of(0, 10, 40).map(n -> visit("v", DAY.plusDays(n), null, n)).toList());
    assertThat(d.isTimed()).isTrue();
    assertThat(d.places()).containsExactly(0.0, 0.25, 1.0);
    assertThat(d.labels()).containsExactly("2026-05-31", "2026-06-10", "2026-07-10");
  }

  @Test
  void ofOneTimeTheyStandByNames() {
    Drift d = Drift.of(List.of(visit("run-2", DAY, "09:00", 1), visit("run-1", DAY, "09:00", 2)));
    assertThat(names(d)).containsExactly("run-1", "run-2");
    assertThat(d.isTimed()).isFalse();
  }
}
