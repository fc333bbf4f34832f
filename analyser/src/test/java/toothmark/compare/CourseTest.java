package toothmark.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import toothmark.units.Measured;

class CourseTest {

  /**
   * Three values of unit uncertainty about their mean: with deviations -d, 0 and d the sum is 2 d².
   * The 95 % point of chi squared with two degrees of freedom is 5.991 (Abramowitz and Stegun,
   * Handbook of Mathematical Functions, table 26.8), so the limit of d is 1.731.
   */
  @Test
  void movesWhereTheSumOfSquaresPassesTheTable() {
    assertThat(course(-1.74, 0, 1.74).moved()).isTrue();
    assertThat(course(-1.72, 0, 1.72).moved()).isFalse();
  }

  @Test
  void oneValueDoesNotMove() {
    assertThat(course(7).moved()).isFalse();
    assertThat(course(7).overall()).isEmpty();
  }

  @Test
  void lastLessFirstSkipsWhatWasNotMeasured() {
    Course c =
        new Course(
            "Offset",
            "°",
            List.of(
                Optional.empty(),
                Optional.of(new Measured(1, 0.3)),
                Optional.empty(),
                Optional.of(new Measured(3, 0.4))));
    Measured d = c.overall().orElseThrow().difference().orElseThrow();
    assertThat(d.value()).isEqualTo(2);
    assertThat(d.standardUncertainty()).isEqualTo(0.5);
  }

  private static Course course(double... values) {
    return new Course(
        "Offset",
        "°",
        Arrays.stream(values).mapToObj(v -> Optional.of(new Measured(v, 1))).toList());
  }
}
