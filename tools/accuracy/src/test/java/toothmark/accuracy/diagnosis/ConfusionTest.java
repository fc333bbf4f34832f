package toothmark.accuracy.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ConfusionTest {

  /** Column 2 never occurs; what was only said comes after the rows. */
  @Test
  void whatIsRightStandsUnderItsOwnNumber() {
    Confusion grid = new Confusion();
    grid.add("weak-signal", "weak-signal");
    grid.add("weak-signal", "weak-signal");
    grid.add("weak-signal", "signal-fading");
    grid.add("damaged-tooth", "weak-signal");

    assertThat(grid.table().toString())
        .isEqualTo(
            """
            | what is wrong | 1 | 3 |
            |:--|--:|--:|
            | 1 weak-signal | 2 | 1 |
            | 2 damaged-tooth | 1 |  |
            """);
    assertThat(grid.others()).isEqualTo("3 signal-fading");
  }
}
