package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.understood;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cells that hold no plain number, and rows that are not whole. */
class CellsTest {

  @TempDir Path folder;

  private String channel(String... cells) throws Exception {
    StringBuilder b = new StringBuilder("Time (ms);CH1 (V)\n");
    for (int i = 0; i < cells.length; i++) {
      b.append(i).append(';').append(cells[i]).append('\n');
    }
    return understood(folder, b.toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "inf",
        "+Inf",
        "Infinity",
        "OL",
        "overflow",
        "***",
        "∞",
        "OVER",
        "over range",
        "clip"
      })
  void overRange(String word) throws Exception {
    assertThat(channel("1", "5.5", word, word, "2"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.0 5.5 5.5 5.5 2.0
            ! column 2 (CH1): 2 cells over range, read as the column's extreme
            """);
  }

  @ParameterizedTest
  @ValueSource(strings = {"-inf", "-OL", "-∞", "underflow", "-***", "\u2212overflow"})
  void underRange(String word) throws Exception {
    assertThat(channel("1", "-5.5", word, "2", "3"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.0 -5.5 -5.5 2.0 3.0
            ! column 2 (CH1): 1 cell over range, read as the column's extreme
            """);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "NaN", "nan", "n/a", "--", "-", "null", "#N/A"})
  void missing(String word) throws Exception {
    assertThat(channel(word, "1", word, word, "4", "5", word))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.0 1.0 2.0 3.0 4.0 5.0 5.0
            ! column 2 (CH1): 4 cells without a number, filled from the neighbours
            """);
  }

  @Test
  void missingBesideOverRange() throws Exception {
    assertThat(channel("1", "", "inf", "", "3"))
        .startsWith("CH1 in V: every 0.001 s from 0.0 s: 1.0 2.0 3.0 3.0 3.0\n");
  }

  @Test
  void missingTime() throws Exception {
    assertThat(understood(folder, "Time (ms),CH1 (V)\n0,1\n1,2\n,3\n3,4\n4,5\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.0 2.0 3.0 4.0 5.0
            ! column 1 (Time): 1 cell without a number, filled from the neighbours
            """);
  }

  @Test
  void channelWithoutAnyNumber() throws Exception {
    assertThat(understood(folder, "Time (ms),CH1 (V),CH2 (V)\n0,1,NaN\n1,2,NaN\n2,3,NaN\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.0 2.0 3.0
            ! column 3 (CH2) holds no number; left out
            """);
  }

  @ParameterizedTest
  @ValueSource(strings = {"5", "5,", "5,3.5,", "0.00", "5,3.5,-", "5,3.5,1e"})
  void lastLineCutShort(String last) throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V),CH2 (V)\n");
    for (int i = 0; i < 5; i++) {
      b.append(i).append(",1.50,2.50\n");
    }
    assertThat(understood(folder, b + last))
        .isEqualTo(
            "CH1 in V: every 0.001 s from 0.0 s: 1.5 1.5 1.5 1.5 1.5\n"
                + "CH2 in V: every 0.001 s from 0.0 s: 2.5 2.5 2.5 2.5 2.5\n"
                + "! the last line is cut short ('"
                + last
                + "') and was left out\n");
  }

  @Test
  void lastNumberCutShort() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V)\n");
    for (int i = 0; i < 10; i++) {
      b.append(i).append(",1.500\n");
    }
    assertThat(understood(folder, b + "10,1.5"))
        .endsWith("1.5 1.5\n! the last line is cut short ('10,1.5') and was left out\n");
    assertThat(understood(folder, b + "10,1.512")).endsWith("1.5 1.512\n");
  }

  @Test
  void lastNumberWithAnExponentCutShort() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V)\n");
    for (int i = 0; i < 10; i++) {
      b.append(i).append(",1.500e-01\n");
    }
    assertThat(understood(folder, b + "10,1.5"))
        .endsWith("0.15 0.15\n! the last line is cut short ('10,1.5') and was left out\n");
    assertThat(understood(folder, b + "10,1.512e-01")).endsWith("0.15 0.1512\n");
    b.append("10,1.500e-02\n");
    assertThat(understood(folder, b + "11,1.5e-01")).endsWith("0.15 0.015 0.15\n");
  }

  @Test
  void aBrokenRowIsFilled() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V),CH2 (V)\n");
    for (int i = 0; i < 5; i++) {
      b.append(i).append(i == 2 ? ",7\n" : "," + i + ",0\n");
    }
    assertThat(understood(folder, b.toString()))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 0.0 1.0 2.0 3.0 4.0
            CH2 in V: every 0.001 s from 0.0 s: 0.0 0.0 0.0 0.0 0.0
            ! column 1 (Time): 1 cell without a number, filled from the neighbours
            ! column 2 (CH1): 1 cell without a number, filled from the neighbours
            ! column 3 (CH2): 1 cell without a number, filled from the neighbours
            ! 1 row has not 3 cells, first in line 4; filled from the neighbours
            """);
  }
}
