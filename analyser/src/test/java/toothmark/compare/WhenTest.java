package toothmark.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.compare.When.Source;

class WhenTest {

  private static final LocalDateTime SAVED = LocalDateTime.of(2026, 6, 2, 16, 45, 30);

  private static Instant instant(LocalDateTime local) {
    return local.atZone(ZoneId.systemDefault()).toInstant();
  }

  private static When of(String... names) {
    return When.of(
        List.of(names), Optional.of(instant(SAVED)), instant(LocalDateTime.of(2026, 7, 1, 9, 0)));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-05-31, ",
    "van 20260531 cold, ",
    "2026-05-31T1430, 14:30",
    "2026-05-31_14-30-05, 14:30:05",
    "2026-05-31 14.30 hot.csv, 14:30",
    "20260531-143005.csv, 14:30:05",
    "2026-05-31-36-1, ",
    "2026-05-31-60-2, ",
    "2026-05-31 2500rpm, ",
    "99999999-2026-05-31, ",
  })
  void aNameTellsTheDayAndPerhapsTheTime(String name, LocalTime time) {
    assertThat(of("capture.csv", name))
        .isEqualTo(new When(LocalDate.of(2026, 5, 31), Optional.ofNullable(time), Source.NAME));
  }

  @Test
  void ofTheDayInANameTheFileTellsTheTime() {
    assertThat(of("2026-06-02-hot"))
        .isEqualTo(new When(SAVED.toLocalDate(), Optional.of(SAVED.toLocalTime()), Source.CAPTURE));
  }

  @Test
  void withoutADateInANameTheFileTells() {
    assertThat(of("hot")).isEqualTo(of("2026-06-02-hot"));
    assertThat(When.of(List.of("hot"), Optional.empty(), instant(SAVED)))
        .isEqualTo(new When(SAVED.toLocalDate(), Optional.of(SAVED.toLocalTime()), Source.RESULT));
  }
}
