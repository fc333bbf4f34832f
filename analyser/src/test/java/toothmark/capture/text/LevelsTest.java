package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.understood;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Logic levels: rows that were written on a change, words, buses, run lengths. */
class LevelsTest {

  @TempDir Path folder;

  @Test
  void rowsOnChangesOnly() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time [s], D0, D1
                0.000000, 1, 0
                0.000186, 0, 0
                0.000730, 1, 0
                0.000731, 1, 1
                0.001268, 0, 1
                0.002000, 0, 1
                """))
        .isEqualTo(
            """
            D0: levels 1.0 at 0.0 0.0 at 1.86E-4 1.0 at 7.3E-4 0.0 at 0.001268 until 0.002, step 1.0E-6
            D1: levels 0.0 at 0.0 1.0 at 7.31E-4 until 0.002, step 1.0E-6
            """);
  }

  /** Written in microseconds, but all whole steps of 4 µs apart: the recorder's own clock. */
  @Test
  void resolutionIsTheRecordersStep() throws Exception {
    StringBuilder b = new StringBuilder("Time (us),D0\n");
    for (int i = 0; i < 30; i++) {
      b.append(400 * i + 4 * (i * i % 17)).append(',').append(i % 2).append('\n');
    }
    assertThat(understood(folder, b.toString())).endsWith(", step 4.0E-6\n");
  }

  /** A wheel at steady speed gives evenly spaced changes; they are changes all the same. */
  @Test
  void evenlySpacedChanges() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (ms),Hall
                0,0
                2,1
                4,0
                6,1
                8,0
                10,1
                12,0
                14,1
                16,0
                """))
        .startsWith("Hall: levels 0.0 at 0.0 1.0 at 0.002 0.0 at 0.004 ");
  }

  @Test
  void sampledLogicStaysSampled() throws Exception {
    assertThat(
            understood(
                folder, "Time (ms),Hall\n0,0\n1,0\n2,0\n3,1\n4,1\n5,1\n6,0\n7,0\n8,0\n9,1\n"))
        .isEqualTo("Hall: every 0.001 s from 0.0 s: 0.0 0.0 0.0 1.0 1.0 1.0 0.0 0.0 0.0 1.0\n");
  }

  @ParameterizedTest
  @CsvSource({
    "low,high",
    "L,H",
    "falling,rising",
    "off,on",
    "false,true",
    "Tief,Hoch",
    "fallend,steigend"
  })
  void levelsInWords(String low, String high) throws Exception {
    assertThat(
            understood(
                folder,
                "Time (us),Hall\n100,"
                    + low
                    + "\n250,"
                    + high
                    + "\n330,"
                    + low
                    + "\n480,"
                    + high
                    + "\n"))
        .isEqualTo(
            "Hall: levels 0.0 at 1.0E-4 1.0 at 2.5E-4 0.0 at 3.3E-4 1.0 at 4.8E-4 until 4.8E-4,"
                + " step 1.0E-6\n");
  }

  @Test
  void voltagesOfTwoLevelsAtUnevenTimes() throws Exception {
    assertThat(understood(folder, "Time (us),Hall (V)\n100,0.0\n250,5.0\n330,0.0\n485,5.0\n"))
        .isEqualTo(
            "Hall in V: levels 0.0 at 1.0E-4 5.0 at 2.5E-4 0.0 at 3.3E-4 5.0 at 4.85E-4 until"
                + " 4.85E-4, step 1.0E-6\n");
  }

  @Test
  void hexadecimalBusAtUnevenTimes() throws Exception {
    assertThat(understood(folder, "Time (us),Bus\n0,0x0\n150,0x1\n230,0x3\n485,0x2\n500,0x2\n"))
        .isEqualTo(
            """
            Bus[0]: levels 0.0 at 0.0 1.0 at 1.5E-4 0.0 at 4.85E-4 until 5.0E-4, step 1.0E-6
            Bus[1]: levels 0.0 at 0.0 1.0 at 2.3E-4 until 5.0E-4, step 1.0E-6
            """);
  }

  /** None of the words happens to hold a letter; the header says what they are. */
  @Test
  void hexadecimalBusByItsName() throws Exception {
    assertThat(understood(folder, "Time[us] Data[hex]\n0 0000\n334 0010\n1167 0000\n2000 0010\n"))
        .contains("Data[4]: levels 0.0 at 0.0 1.0 at 3.34E-4 0.0 at 0.001167 1.0 at 0.002");
  }

  @Test
  void hexadecimalBusWithoutPrefix() throws Exception {
    assertThat(understood(folder, "Interval,1,us\nBus,Other\n0A,0\n0B,0\n0F,0\n04,1\n04,1\n00,1\n"))
        .isEqualTo(
            """
            Bus[0]: every 1.0E-6 s from 0.0 s: 0.0 1.0 1.0 0.0 0.0 0.0
            Bus[1]: every 1.0E-6 s from 0.0 s: 1.0 1.0 1.0 0.0 0.0 0.0
            Bus[2]: every 1.0E-6 s from 0.0 s: 0.0 0.0 1.0 1.0 1.0 0.0
            Bus[3]: every 1.0E-6 s from 0.0 s: 1.0 1.0 1.0 0.0 0.0 0.0
            Other: every 1.0E-6 s from 0.0 s: 0.0 0.0 0.0 1.0 1.0 1.0
            """);
  }

  @Test
  void levelsAndHowLongEachLasts() throws Exception {
    assertThat(understood(folder, "level,duration (us)\n0,100\n1,250\n0,80\n1,155\n"))
        .isEqualTo(
            "level: levels 0.0 at 0.0 1.0 at 1.0E-4 0.0 at 3.5E-4 1.0 at 4.3E-4 until 5.85E-4, step"
                + " 1.0E-6\n");
  }

  @Test
  void repeatedLevelIsNoChange() throws Exception {
    assertThat(understood(folder, "Time (us),D0\n0,1\n7,1\n15,0\n33,0\n34,0\n50,1\n50,0\n"))
        .isEqualTo("D0: levels 1.0 at 0.0 0.0 at 1.5E-5 until 5.0E-5, step 1.0E-6\n");
  }

  @Test
  void binaryWords() throws Exception {
    assertThat(understood(folder, "Time (us),D1-D0\n0,00\n7,01\n12,11\n20,00\n"))
        .isEqualTo(
            """
            D1-D0[0]: levels 0.0 at 0.0 1.0 at 7.0E-6 0.0 at 2.0E-5 until 2.0E-5, step 1.0E-6
            D1-D0[1]: levels 0.0 at 0.0 1.0 at 1.2E-5 0.0 at 2.0E-5 until 2.0E-5, step 1.0E-6
            """);
  }

  @Test
  void lettersForTheDirectionBeforeTheTime() throws Exception {
    assertThat(understood(folder, "edge,time (us)\nR,0\nF,7\nR,12\n"))
        .isEqualTo(
            "edge: levels 1.0 at 0.0 0.0 at 7.0E-6 1.0 at 1.2E-5 until 1.2E-5, step 1.0E-6\n");
  }
}
