package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.understood;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;

/** Lists of edge times and of tooth periods. */
class EventsTest {

  private static final String PERIODS = "1: instants 0.0 0.013739 0.025643 0.036552, step 1.0E-6\n";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tooth period (us)",
        "period_us",
        "Periodendauer (µs)",
        "interval [us]",
        "dt (us)",
        "tooth time (us)",
        "Zahnperiode (µs)",
        "durée (µs)"
      })
  void periods(String header) throws Exception {
    assertThat(understood(folder, header + "\n13739\n11904\n10909\n")).isEqualTo(PERIODS);
  }

  @Test
  void periodsInMilliseconds() throws Exception {
    assertThat(understood(folder, "Periode (ms)\n13,739\n11,904\n10,909\n")).isEqualTo(PERIODS);
  }

  @Test
  void periodsBesideAToothNumber() throws Exception {
    assertThat(understood(folder, "tooth,period (us)\n5,13739\n6,11904\n1,10909\n"))
        .isEqualTo(PERIODS);
  }

  @Test
  void periodsInCountsOfAStatedClock() throws Exception {
    assertThat(understood(folder, "clock,2,MHz\nperiod (counts)\n27478\n23808\n21818\n"))
        .isEqualTo("1: instants 0.0 0.013739 0.025643 0.036552, step 5.0E-7\n");
    assertThat(understood(folder, "1 tick = 0.5 us\nperiod (ticks)\n27478\n23808\n21818\n"))
        .isEqualTo("1: instants 0.0 0.013739 0.025643 0.036552, step 5.0E-7\n");
  }

  /** 10 000 counts of 1 MHz from edge to edge, 16 bits: 60 000 + 10 000 - 65 536 = 4464. */
  @Test
  void aCounterThatWrapsHoldsTimes() throws Exception {
    StringBuilder list = new StringBuilder("timer clock: 1 MHz\ncapture register\n");
    StringBuilder instants = new StringBuilder("1: instants");
    for (int i = 0; i < 12; i++) {
      list.append(i * 10_000 % 65_536).append('\n');
      instants.append(' ').append(i / 100.0);
    }
    assertThat(understood(folder, list.toString())).startsWith(instants + ", step 1.0E-6\n");
  }

  @Test
  void aMarkOfThousandsIsNoFastCrank() throws Exception {
    assertThat(CaptureText.refused(folder, "Zahn;Dauer (µs)\n1;1.668\n2;1.668\n3;3.333\n"))
        .isEqualTo(
            "capture.txt: line 2: the edges would be 2.223 µs apart, but teeth that pass a sensor"
                + " are at least 10 µs apart; state capture.time_unit in the job sheet, or"
                + " capture.decimal_mark if a mark of thousands was taken for that of decimals");
  }

  @Test
  void periodsWithoutAUnit() throws Exception {
    assertThat(understood(folder, "period\n13739\n11904\n10909\n"))
        .isEqualTo(PERIODS + "! the whole numbers have no unit; taken as microseconds\n");
    ReadingOptions stated = CaptureText.timeUnit("us");
    assertThat(understood(folder, "period\n13739\n11904\n10909\n", stated)).isEqualTo(PERIODS);
  }

  @Test
  void edgeTimes() throws Exception {
    assertThat(understood(folder, "edge time (s)\n-0.002000\n0.001500\n0.004750\n"))
        .isEqualTo("1: instants -0.002 0.0015 0.00475, step 1.0E-6\n");
  }

  @Test
  void edgeTimesByUnitAlone() throws Exception {
    assertThat(understood(folder, "(us)\n2000\n5500\n8750\n"))
        .isEqualTo("1: instants 0.002 0.0055 0.00875, step 1.0E-6\n");
  }

  @Test
  void edgeTimesBesideAnIndex() throws Exception {
    assertThat(understood(folder, "index;time (ms)\n1;2,0\n2;5,5\n3;8,7\n"))
        .isEqualTo("1: instants 0.002 0.0055 0.0087, step 1.0E-4\n");
  }

  /** A 16-bit counter at 1 MHz is full after 65.536 ms. */
  @Test
  void edgeTimesOfASixteenBitCounter() throws Exception {
    assertThat(
            understood(
                folder,
                "timer clock: 1 MHz\ntime (counts)\n10000\n40000\n65000\n20000\n50000\n2000\n"))
        .isEqualTo(
            """
            1: instants 0.01 0.04 0.065 0.085536 0.115536 0.133072, step 1.0E-6
            ! the times start again 2 times as a counter does when it is full; they were joined
            """);
  }

  @Test
  void edgeTimesOfAThirtyTwoBitCounterInMicroseconds() throws Exception {
    assertThat(understood(folder, "time_us\n4294900000\n4294960000\n32704\n92704\n"))
        .isEqualTo(
            """
            1: instants 4294.9 4294.96 4295.0 4295.06, step 1.0E-6
            ! the times start again 1 time as a counter does when it is full; they were joined
            """);
  }

  @Test
  void anEdgeTwiceAtOneTime() throws Exception {
    assertThat(understood(folder, "edge time (us)\n0\n50\n50\n90\n"))
        .isEqualTo(
            """
            1: instants 0.0 5.0E-5 9.0E-5, step 1.0E-6
            ! 1 edge at the time of the edge before left out
            """);
  }

  @Test
  void nameInCamelCase() throws Exception {
    assertThat(understood(folder, "ToothTime,Trigger\n500,0\n502,1\n1000,0\n"))
        .isEqualTo(
            """
            1: instants 0.0 5.0E-4 0.001002 0.002002, step 1.0E-6
            ! the whole numbers have no unit; taken as microseconds
            ! column 2 beside the periods was left out
            """);
  }

  @Test
  void risingDecimalsAlone() throws Exception {
    assertThat(understood(folder, "0.000500\n0.001002\n0.002002\n"))
        .isEqualTo(
            """
            1: instants 5.0E-4 0.001002 0.002002, step 1.0E-6
            ! the column of times has no unit; taken as seconds
            """);
  }

  @Test
  void severalListsOfDifferentLength() throws Exception {
    StringBuilder text = new StringBuilder("crank edge (us),coil edge (us)\n0,400\n1000,30400\n");
    for (int k = 2; k < 40; k++) {
      text.append(k * 1000).append(",\n");
    }
    assertThat(understood(folder, text.toString()))
        .startsWith("crank edge: instants 0.0 0.001 0.002 ")
        .endsWith("\ncoil edge: instants 4.0E-4 0.0304, step 1.0E-6\n");
  }
}
