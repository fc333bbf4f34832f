package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static toothmark.capture.CaptureText.understood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;

/** Columns of times: units, rounding, pauses, clocks and counters. */
class TimesTest {

  @TempDir Path folder;

  private SampledSignal sampled(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("t.csv"), text);
    try (Capture capture = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      doubts = String.join("\n", capture.reading().doubts());
      return (SampledSignal) capture.channels().get(0).signal();
    }
  }

  private String doubts = "";

  /**
   * Times rounded to a step of any size: the true rate is the one the text was made with.
   *
   * @param rate Hz
   * @param decimals digits behind the point; rounded half up, or cut off
   */
  @ParameterizedTest
  @CsvSource({
    "80000,7,HALF_UP",
    "80000,6,HALF_UP",
    "80000,4,HALF_UP",
    "80000,3,HALF_UP",
    "80000,4,DOWN",
    "48000,6,HALF_UP",
    "48000,5,HALF_UP",
    "44100,5,HALF_UP",
    "44100,4,DOWN",
    "1000000,6,HALF_UP",
    "1000000,4,HALF_UP",
    "300000,7,HALF_UP",
    "300000,5,HALF_EVEN",
    "12345,6,HALF_UP",
    "192000,5,HALF_UP"
  })
  void rateBehindRoundedTimes(double rate, int decimals, RoundingMode mode) throws Exception {
    StringBuilder b = new StringBuilder("Time (s),CH1 (V)\n");
    int n = 20_000;
    for (int i = 0; i < n; i++) {
      BigDecimal t = new BigDecimal(i).divide(new BigDecimal(rate), 15, RoundingMode.HALF_UP);
      b.append(t.setScale(decimals, mode).toPlainString())
          .append(',')
          .append(i % 7 - 3)
          .append('\n');
    }
    SampledSignal s = sampled(b.toString());
    assertThat(s.size()).isEqualTo(n);
    assertThat(s.segments()).isEqualTo(1);
    assertThat(s.intervalSeconds()).isEqualTo(1 / rate);
    double step = Math.pow(10, -decimals);
    double cut = mode == RoundingMode.DOWN ? step / 2 : 0;
    assertThat(s.timeOf(0)).isCloseTo(-cut, within(0.1 * step));
  }

  @Test
  void roundedTimesAreMentioned() throws Exception {
    StringBuilder b = new StringBuilder("Time (s),CH1 (V)\n");
    for (int i = 0; i < 1000; i++) {
      b.append(String.format(Locale.ROOT, "%.3f,%d%n", i / 80_000.0, i));
    }
    sampled(b.toString());
    assertThat(doubts)
        .isEqualTo(
            "times are rounded to 1 ms, coarse for the sampling interval; the steady clock of"
                + " 12.5 µs was recovered from all 1000 rows");
  }

  /** Seven significant digits, as a single-precision recorder prints them. */
  @Test
  void scientificNotationOfFixedLength() throws Exception {
    StringBuilder b = new StringBuilder("Time (s),CH1 (V)\n");
    for (int i = 0; i < 30_000; i++) {
      b.append(String.format(Locale.ROOT, "%.5E,%d%n", i / 40_000.0 * 20, i % 5));
    }
    SampledSignal s = sampled(b.toString());
    assertThat(s.intervalSeconds()).isEqualTo(5e-4);
    assertThat(s.segments()).isEqualTo(1);
  }

  /** Sums of doubles printed in full: 0.30000000000000004. */
  @Test
  void timesWithAllDigitsOfADouble() throws Exception {
    StringBuilder b = new StringBuilder("Time (s),CH1 (V)\n");
    double t = 0;
    for (int i = 0; i < 5000; i++) {
      b.append(t).append(',').append(i % 5).append('\n');
      t += 1e-4;
    }
    SampledSignal s = sampled(b.toString());
    assertThat(s.intervalSeconds()).isEqualTo(1e-4);
    assertThat(s.timeOf(4999)).isCloseTo(0.4999, within(1e-9));
  }

  @Test
  void aPauseStartsASegment() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (ms),CH1 (V)
                0.0,1.5
                0.1,2.5
                0.2,3.5
                50.0,1.5
                50.1,2.5
                50.2,3.5
                """))
        .isEqualTo("CH1 in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 3.5 | from 0.05 s: 1.5 2.5 3.5\n");
  }

  @Test
  void aFewLostRowsAreFilled() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V)\n");
    for (int i = 0; i < 400; i++) {
      if (i != 100 && i != 101 && i != 300) {
        b.append(i).append(',').append(2 * i).append('\n');
      }
    }
    SampledSignal s = sampled(b.toString());
    assertThat(doubts)
        .isEqualTo("3 rows of the steady clock are missing; filled by straight lines");
    assertThat(s.size()).isEqualTo(400);
    assertThat(s.segments()).isEqualTo(1);
    double[] v = new double[400];
    s.read(0, v, 400);
    for (int i = 0; i < 400; i++) {
      assertThat(v[i]).isCloseTo(2.0 * i, within(1e-9));
    }
    double[] part = new double[7];
    s.read(98, part, 7);
    assertThat(part).containsExactly(196, 198, v[100], v[101], 204, 206, 208);
  }

  @Test
  void timesThatStartAgain() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (ms),CH1 (V)
                -0.1,1.5
                0.0,2.5
                0.1,3.5
                -0.1,4.5
                0.0,5.5
                0.1,6.5
                """))
        .isEqualTo(
            """
            CH1 in V: every 1.0E-4 s from -1.0E-4 s: 1.5 2.5 3.5 | from 2.0E-4 s: 4.5 5.5 6.5
            ! times start again in 1 segment; placed behind one another, as the pauses between are not known
            """);
  }

  @Test
  void segmentsWithTheirHeaderRepeated() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (ms),CH1 (V)
                0.0,1.5
                0.1,2.5

                Time (ms),CH1 (V)
                7.0,3.5
                7.1,4.5
                """))
        .isEqualTo("CH1 in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 | from 0.007 s: 3.5 4.5\n");
  }

  @Test
  void segmentsAnnouncedWithoutTimes() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Interval,0.1,ms
                CH1 (V),CH2 (V)
                1.5,0
                2.5,0
                Segment 2
                3.5,0
                4.5,1
                """))
        .isEqualTo(
            """
            CH1 in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 | from 2.0E-4 s: 3.5 4.5
            CH2 in V: every 1.0E-4 s from 0.0 s: 0.0 0.0 | from 2.0E-4 s: 0.0 1.0
            """);
  }

  @Test
  void segmentsInAColumn() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Segment,Time (ms),CH1 (V)
                1,-0.1,1.5
                1,0.0,2.5
                2,-0.1,4.5
                2,0.0,5.5
                """))
        .isEqualTo(
            """
            CH1 in V: every 1.0E-4 s from -1.0E-4 s: 1.5 2.5 | from 1.0E-4 s: 4.5 5.5
            ! times start again in 1 segment; placed behind one another, as the pauses between are not known
            """);
  }

  @Test
  void eachChannelWithItsOwnTimes() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (ms);Crank (V);Time (ms);Coil (V)
                0,0;1,5;0,0;10
                0,1;2,5;0,2;11
                0,2;3,5;;
                """))
        .isEqualTo(
            """
            Crank in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 3.5
            Coil in V: every 2.0E-4 s from 0.0 s: 10.0 11.0
            """);
  }

  @Test
  void timesOfDay() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time,CH1 (V)
                23:59:59.998,1.5
                23:59:59.999,2.5
                00:00:00.000,3.5
                00:00:00.001,4.5
                """))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.5 2.5 3.5 4.5
            ! the times start again 1 time at midnight; they were joined
            """);
  }

  @Test
  void dateAndTimeOfDay() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Date,Time,CH1 (V)
                2026-03-01,2026-03-01 10:00:00.000,1.5
                2026-03-01,2026-03-01 10:00:00.001,2.5
                2026-03-01,2026-03-01 10:00:00.002,3.5
                """))
        .startsWith("CH1 in V: every 0.001 s from 0.0 s: 1.5 2.5 3.5\n");
  }

  @Test
  void sampleNumbersWithAStatedRate() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Sample rate,10000,Hz
                Sample,CH1 (V)
                -2,1.5
                -1,2.5
                0,3.5
                """))
        .isEqualTo("CH1 in V: every 1.0E-4 s from -2.0E-4 s: 1.5 2.5 3.5\n");
  }

  @Test
  void sampleNumbersBesideTimes() throws Exception {
    assertThat(understood(folder, "Index,Time (ms),CH1 (V)\n1,0.0,1.5\n2,0.1,2.5\n3,0.2,3.5\n"))
        .isEqualTo("CH1 in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 3.5\n");
  }

  @Test
  void unitFromTheStatedInterval() throws Exception {
    assertThat(
            understood(folder, "Sample Interval,0.1,ms\nTime,CH1 (V)\n0,1.5\n100,2.5\n200,3.5\n"))
        .isEqualTo("CH1 in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 3.5\n");
  }

  @Test
  void statedIntervalThatDoesNotMatch() throws Exception {
    assertThat(
            understood(
                folder, "Sample Interval,0.2,ms\nTime (ms),CH1 (V)\n0.0,1.5\n0.1,2.5\n0.2,3.5\n"))
        .isEqualTo(
            """
            CH1 in V: every 1.0E-4 s from 0.0 s: 1.5 2.5 3.5
            ! the interval stated in line 1 is 200 µs, but the times are 100 µs apart; the times were followed
            """);
  }

  @Test
  void statementsOfTheUser() throws Exception {
    ReadingOptions unit = CaptureText.timeUnit("ms");
    assertThat(understood(folder, "Time,CH1 (V)\n0,1.5\n2,2.5\n4,3.5\n", unit))
        .isEqualTo("CH1 in V: every 0.002 s from 0.0 s: 1.5 2.5 3.5\n");
    ReadingOptions interval = CaptureText.interval(2.5e-4);
    assertThat(understood(folder, "CH1 (V)\n1.5\n2.5\n3.5\n", interval))
        .isEqualTo("CH1 in V: every 2.5E-4 s from 0.0 s: 1.5 2.5 3.5\n");
  }

  /** Uneven rows are no samples on a clock; straight lines between them are what is known. */
  @Test
  void unevenTimes() throws Exception {
    StringBuilder b = new StringBuilder("Time (s),CH1 (V)\n");
    Random random = new Random(5);
    double t = 0;
    double last = 0;
    for (int i = 0; i < 2000; i++) {
      b.append(String.format(Locale.ROOT, "%.7f,%.7f%n", t, 3 * t));
      last = t;
      t += 1e-3 * (0.6 + 0.8 * random.nextDouble());
    }
    SampledSignal s = sampled(b.toString());
    assertThat(doubts).startsWith("the rows come at uneven times, about ");
    assertThat(s.intervalSeconds()).isEqualTo(5e-4);
    double[] v = new double[(int) s.size()];
    s.read(0, v, v.length);
    for (int i = 0; i < v.length; i++) {
      assertThat(v[i]).isCloseTo(3 * s.timeOf(i), within(1e-6));
    }
    assertThat(s.span().endExclusive()).isBetween(last, last + 1e-3);
  }

  @Test
  void aLittleScatterAroundASteadyClock() throws Exception {
    StringBuilder b = new StringBuilder("Time (s),CH1 (V)\n");
    Random random = new Random(6);
    for (int i = 0; i < 2000; i++) {
      double t = 1e-3 * (i + 0.02 * (random.nextDouble() - 0.5));
      b.append(String.format(Locale.ROOT, "%.8f,%d%n", t, i % 9));
    }
    SampledSignal s = sampled(b.toString());
    assertThat(s.intervalSeconds()).isEqualTo(1e-3);
    assertThat(doubts).startsWith("times scatter by up to 10").endsWith("the clock was followed");
  }

  /** Noon comes after 11 am, and a zone of summer is no part of the time. */
  @ParameterizedTest
  @CsvSource({
    "11/27/2026 11:59:59.9990 AM,11/27/2026 11:59:59.9995 AM,11/27/2026 12:00:00.0000 PM",
    "2026-11-27T11:59:59.9990+01:00,2026-11-27T11:59:59.9995+01:00,2026-11-27T12:00:00.0000+01:00"
  })
  void twelveHoursAndZones(String one, String two, String three) throws Exception {
    SampledSignal s = sampled("Time;V\n" + one + ";1.5\n" + two + ";2.5\n" + three + ";3.5\n");
    assertThat(s.intervalSeconds()).isEqualTo(5e-4);
    assertThat(s.size()).isEqualTo(3);
  }
}
