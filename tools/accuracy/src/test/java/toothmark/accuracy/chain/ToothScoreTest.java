package toothmark.accuracy.chain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Teeth written by hand: five turns of a 4-1 wheel, a slot each second; tooth 2 of turn 2 is lost.
 */
class ToothScoreTest {

  @TempDir private Path folder;
  private final StringBuilder result =
      new StringBuilder("time_s,tooth,revolution,kind,angle_deg,rpm\n");

  @BeforeEach
  void writeTruth() throws IOException {
    StringBuilder truth = new StringBuilder("time,tooth,revolution,theta,missing\n");
    for (int turn = 0; turn < 5; turn++) {
      for (int tooth = 1; tooth <= 3; tooth++) {
        int slot = 4 * turn + tooth - 1;
        int lost = turn == 2 && tooth == 2 ? 1 : 0;
        truth.append(
            String.format(
                Locale.ROOT, "%d,%d,%d,%d,%d%n", 10 + slot, tooth, turn, 90 * slot, lost));
      }
    }
    Files.writeString(folder.resolve("truth.csv"), truth);
  }

  private void tooth(double time, String tooth, String kind) {
    result.append(time).append(',').append(tooth).append(",0,").append(kind).append(",,\n");
  }

  private ToothScore score(boolean fromFirstEdge) throws IOException {
    Files.writeString(folder.resolve("teeth.csv"), result);
    return ToothScore.of(
        folder.resolve("truth.csv"), folder.resolve("teeth.csv"), 4, fromFirstEdge);
  }

  private void perfect(double zero) {
    for (int turn = 0; turn < 5; turn++) {
      for (int tooth = 1; tooth <= 3; tooth++) {
        String kind = turn == 2 && tooth == 2 ? "missing" : "seen";
        tooth(zero + 4 * turn + tooth - 1, Integer.toString(tooth), kind);
      }
    }
  }

  @Test
  void allRight() throws IOException {
    perfect(10);
    ToothScore score = score(false);
    // Fifteen teeth, less four at the start and one at the end; one of the ten is lost.
    assertThat(score.teeth()).isEqualTo(9);
    assertThat(score.recall()).isEqualTo(1.0);
    assertThat(score.lost()).isEqualTo(1);
    assertThat(score.lostRight()).isEqualTo(1);
    assertThat(score.excess()).isZero();
    assertThat(score.scatterDegrees()).isCloseTo(0.0, within(1e-9));
  }

  @Test
  void aListOfPeriodsCountsFromItsFirstEdge() throws IOException {
    perfect(0);
    assertThat(score(true).recall()).isEqualTo(1.0);
    assertThat(score(false).recall()).isLessThan(0.2);
  }

  @Test
  void aWrongNumberIsWrongAndAStrayIsNoTooth() throws IOException {
    for (int turn = 0; turn < 5; turn++) {
      tooth(10 + 4 * turn, "1", "seen");
      tooth(10.4 + 4 * turn, "", "stray");
      tooth(11 + 4 * turn, "3", "seen");
      tooth(12 + 4 * turn, "3", "missing");
      tooth(13 + 4 * turn, "4", "seen");
    }
    ToothScore score = score(false);
    assertThat(score.right()).isEqualTo(6);
    assertThat(score.rightSeen()).isEqualTo(3);
    assertThat(score.lostRight()).isZero();
    assertThat(score.excess()).isEqualTo(3);
  }

  @Test
  void scatterLeavesOutWhatAllHaveInCommon() throws IOException {
    for (int turn = 0; turn < 5; turn++) {
      for (int tooth = 1; tooth <= 3; tooth++) {
        double moved = 0.1 + (tooth == 2 ? 0.03 : 0.0);
        tooth(10 + 4 * turn + tooth - 1 + moved, Integer.toString(tooth), "seen");
      }
    }
    // One in ten of the ten judged is lost; of the nine, three (turns 1, 3 and 4) are 2.7° late.
    assertThat(score(false).scatterDegrees())
        .isCloseTo(2.7 * Math.sqrt(3.0 / 9 * 6 / 9), within(1e-9));
  }
}
