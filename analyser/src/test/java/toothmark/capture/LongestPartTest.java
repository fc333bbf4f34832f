package toothmark.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records of several triggers, and of a recorder that paused. */
class LongestPartTest {

  @TempDir Path folder;

  private String cut(String rows) throws Exception {
    Path file = Files.writeString(folder.resolve("t.csv"), "Time (ms),CH1 (V)\n" + rows);
    try (Capture capture = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      Capture part = LongestPart.of(capture);
      return part == capture ? "whole" : CaptureText.describe(part);
    }
  }

  private static void trigger(StringBuilder rows, int samples, double volts) {
    for (int i = 0; i < samples; i++) {
      rows.append(i).append(',').append(volts + i % 4).append('\n');
    }
  }

  /** Each trigger has its own zero; the second one's samples stand behind the first one's 20. */
  @Test
  void theLongestTriggerIsKept() throws Exception {
    StringBuilder rows = new StringBuilder();
    trigger(rows, 20, 0.5);
    trigger(rows, 24, 5.5);
    trigger(rows, 10, 9.5);
    assertThat(cut(rows.toString()))
        .isEqualTo(
            "CH1 in V: every 0.001 s from 0.02 s:"
                + " 5.5 6.5 7.5 8.5".repeat(6)
                + "\n! times start again in 2 segments; placed behind one another, as the pauses"
                + " between are not known\n! the record is in 3 parts, from one to the next of which"
                + " no crank can be counted; only the longest is examined, 24.0\u202fms from 0.020"
                + "\u202fs\n");
  }

  @Test
  void aPauseLongerThanWhatIsRecordedParts() throws Exception {
    assertThat(cut("0,1.5\n1,2.5\n2,3.5\n50,5.5\n51,6.5\n52,7.5\n53,8.5\n"))
        .startsWith("CH1 in V: every 0.001 s from 0.05 s: 5.5 6.5 7.5 8.5\n");
  }

  /** The same names again halfway, as a recorder writes them on every page; time goes on. */
  @Test
  void aRepeatedHeaderDoesNot() throws Exception {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < 60; i++) {
      rows.append(i == 30 ? "Time (ms),CH1 (V)\n" : "").append(i).append(",1.").append(i % 7);
      rows.append('\n');
    }
    assertThat(cut(rows.toString())).isEqualTo("whole");
  }

  @Test
  void aShortPauseDoesNot() throws Exception {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < 200; i++) {
      rows.append(i < 100 ? i : i + 20).append(",1.").append(i % 7).append('\n');
    }
    assertThat(cut(rows.toString())).isEqualTo("whole");
  }
}
