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

  /** 27478 counts of 0.5 us are 13.739 ms. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "period [0.5us]",
        "period (x0.5 µs)",
        "period in 0.5 us counts",
        "# 1 count = 500 ns\nperiod",
        "F_CPU: 16 MHz, prescaler: 8\nperiod (ticks)",
        "timer resolution 0.5 us\nperiod (ticks)"
      })
  void whatATickIsWorth(String head) throws Exception {
    assertThat(understood(folder, head.replace("\\n", "\n") + "\n27478\n23808\n21818\n"))
        .isEqualTo("1: instants 0.0 0.013739 0.025643 0.036552, step 5.0E-7\n");
  }

  @Test
  void countsOfAClockThatNothingStates() throws Exception {
    assertThat(CaptureText.refused(folder, "period (counts)\n27478\n23808\n21818\n"))
        .isEqualTo(
            "capture.txt: column 1: counts of a clock that nothing states; add a line such as '#"
                + " timer clock: 2 MHz' above, or state scale and unit in [[capture.columns]] of"
                + " the job sheet");
  }

  /** 13.739 s from tooth to tooth is no engine; 13.739 ms is one on the starter. */
  @Test
  void decimalsThatCannotBeSeconds() throws Exception {
    assertThat(understood(folder, "tooth period\n13.739\n11.904\n10.909\n"))
        .isEqualTo(
            PERIODS
                + "! the times in column 1 have no unit; in seconds they would be 11.904 s apart,"
                + " too far for teeth: taken as milliseconds\n");
    assertThat(understood(folder, "Time,CH1 (V)\n0.00,1.5\n0.02,2.5\n0.04,1.0\n0.06,0.5\n"))
        .isEqualTo(
            """
            CH1 in V: every 2.0E-5 s from 0.0 s: 1.5 2.5 1.0 0.5
            ! the times in column 1 have no unit; in seconds they would be 20 ms apart, too far for \
            teeth: taken as milliseconds
            """);
  }

  @Test
  void edgesThatAllRise() throws Exception {
    assertThat(
            understood(folder, "time_us,edge\n0,rising\n1852,rising\n5556,rising\n7410,rising\n"))
        .isEqualTo("1: instants 0.0 0.001852 0.005556 0.00741, step 1.0E-6\n");
  }

  @Test
  void edgesOfSeveralChannels() throws Exception {
    assertThat(understood(folder, "time_us,channel\n0,1\n100,2\n1852,1\n5556,1\n5700,2\n"))
        .isEqualTo(
            """
            channel 1: instants 0.0 0.001852 0.005556, step 1.0E-6
            channel 2: instants 1.0E-4 0.0057, step 1.0E-6
            """);
  }

  @Test
  void changesOfSeveralChannels() throws Exception {
    assertThat(
            understood(
                folder, "time_us,channel,level\n0,0,1\n300,0,0\n400,1,1\n1852,0,1\n1900,1,0\n"))
        .isEqualTo(
            """
            channel 0: levels 1.0 at 0.0 0.0 at 3.0E-4 1.0 at 0.001852 until 0.0019, step 1.0E-6
            channel 1: levels 1.0 at 4.0E-4 0.0 at 0.0019 until 0.0019, step 1.0E-6
            """);
  }

  @Test
  void channelsInWords() throws Exception {
    assertThat(
            CaptureText.refused(
                folder, "time_us,channel\n0,crank\n100,cam\n1852,crank\n5556,crank\n"))
        .isEqualTo(
            "capture.txt: column 2 (channel) names several channels in words, such as crank and"
                + " cam; number them, or write a file for each");
  }

  @Test
  void howLongEachLevelLastsInPairs() throws Exception {
    assertThat(understood(folder, "high (us),low (us)\n500,1500\n250,1750\n"))
        .isEqualTo(
            "1: levels 1.0 at 0.0 0.0 at 5.0E-4 1.0 at 0.002 0.0 at 0.00225 until 0.004, step"
                + " 1.0E-6\n");
  }

  @Test
  void timesFromTwoZeros() throws Exception {
    assertThat(
            understood(
                folder,
                "n,abs_time_s,rel_time_s\n0,100.000000,0.000000\n1,100.001852,0.001852\n"
                    + "2,100.005556,0.005556\n"))
        .isEqualTo(
            """
            1: instants 100.0 100.001852 100.005556, step 1.0E-6
            ! column 3 holds the times of another column, counted from another zero; left out
            """);
  }

  @Test
  void timesAndHowLongAgoTheLastWas() throws Exception {
    assertThat(
            understood(
                folder,
                "Time (s),Time since previous (s)\n0.001852,0.001852\n0.005556,0.003704\n"
                    + "0.007408,0.001852\n"))
        .isEqualTo("1: instants 0.001852 0.005556 0.007408, step 1.0E-6\n");
  }

  /** Letters alone pass for hexadecimal digits too. */
  @Test
  void channelsInLetters() throws Exception {
    assertThat(
            CaptureText.refused(
                folder, "time_us,channel\n0,A\n100,B\n1852,A\n5556,A\n7408,A\n7500,B\n"))
        .isEqualTo(
            "capture.txt: column 2 (channel) names several channels in words, such as A and"
                + " B; number them, or write a file for each");
  }

  /** What speaks of the high level twice does not say how long the low one lasts. */
  @Test
  void highAndLowLevelsMakeAPair() throws Exception {
    assertThat(understood(folder, "high period (us),on period (us)\n926,900\n1852,1800\n926,900\n"))
        .isEqualTo(
            "1: instants 0.0 9.26E-4 0.002778 0.003704, step 1.0E-6\n"
                + "! column 2 holds periods as well; left out\n");
  }

  @Test
  void aLogWithUnevenTimesIsNoCapture() throws Exception {
    assertThat(
            CaptureText.refused(
                folder, "Time (s),RPM\n0.00,900\n0.05,905\n0.11,907\n0.17,906\n0.26,903\n"))
        .isEqualTo(
            "capture.txt: column 2 (RPM) holds speeds, 60 ms apart: this is a log, in which no"
                + " tooth can be seen; give it with --log beside a capture of the crank sensor");
  }

  @Test
  void aLogOfSpeedsIsNoCapture() throws Exception {
    assertThat(
            CaptureText.refused(
                folder, "Time (s),RPM,Advance (deg)\n0.00,900,10\n0.05,905,11\n0.10,910,10\n"))
        .isEqualTo(
            "capture.txt: column 2 (RPM) holds speeds, 50 ms apart: this is a log, in which no"
                + " tooth can be seen; give it with --log beside a capture of the crank sensor");
  }

  @Test
  void aTimersClockIsNotThatOfSamples() throws Exception {
    assertThat(
            CaptureText.refused(
                folder, "# timer clock 2 MHz\noverflow,capture\n0,7408\n0,9000\n1,3000\n1,6000\n"))
        .startsWith("capture.txt: line 3: neither a column of times nor a sampling interval");
  }
}
