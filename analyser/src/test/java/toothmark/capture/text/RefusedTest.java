package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.refused;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;
import toothmark.capture.UnsupportedCaptureException;

/** What cannot be read is refused with the file, the place, what was found and the cure. */
class RefusedTest {

  private static final String CURE =
      " state capture.interval_s or capture.rate_hz in the job sheet, or what the column holds:"
          + " [[capture.columns]] with role = \"period\" or \"time\", and its unit, or as scale the"
          + " seconds that a count lasts";

  @TempDir Path folder;

  @Test
  void nothing() throws Exception {
    assertThat(refused(folder, ""))
        .isEqualTo("capture.txt: the file is empty; record the capture again");
  }

  @Test
  void onlyBlankLines() throws Exception {
    assertThat(refused(folder, "\n\n  \n"))
        .isEqualTo(
            "capture.txt: no rows of numbers were found in the first 3 lines; export the capture as"
                + " delimited text with one row for each sample");
  }

  @Test
  void prose() throws Exception {
    assertThat(refused(folder, "Dear customer,\nthe car is ready.\n"))
        .isEqualTo(
            "capture.txt: no rows of numbers were found in the first 2 lines; export the capture as"
                + " delimited text with one row for each sample");
  }

  @Test
  void wordBetweenTheRows() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V)\n");
    for (int i = 0; i < 100; i++) {
      b.append(i).append(i == 70 ? ",broken\n" : ",1\n");
    }
    assertThat(refused(folder, b.toString()))
        .isEqualTo(
            "capture.txt: line 72, column 2: 'broken' is no number; mend or remove the line");
  }

  @Test
  void lineNumbersCountBlankLinesAndRemarks() throws Exception {
    StringBuilder b = new StringBuilder("# remark\n\nTime (ms),CH1 (V)\n");
    for (int i = 0; i < 100; i++) {
      b.append(i).append(i == 70 ? ",broken\n" : ",1\n").append(i == 20 ? "# more\n\n" : "");
    }
    assertThat(refused(folder, b.toString()))
        .isEqualTo(
            "capture.txt: line 76, column 2: 'broken' is no number; mend or remove the line");
  }

  @Test
  void rowsOfAnotherWidth() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V),CH2 (V)\n");
    for (int i = 0; i < 100; i++) {
      b.append(i).append(i % 10 == 5 ? ",1\n" : ",1,2\n");
    }
    assertThat(refused(folder, b.toString()))
        .isEqualTo(
            "capture.txt: line 7: not 3 cells as in the rows before, and 9 more rows like it; mend"
                + " them or state the delimiter");
  }

  @Test
  void neitherTimesNorInterval() throws Exception {
    assertThat(refused(folder, "CH1 (V),CH2 (V)\n1,2\n3,4\n2,1\n"))
        .isEqualTo(
            "capture.txt: line 2: neither a column of times nor a sampling interval was found;"
                + CURE);
  }

  @Test
  void wholeNumbersWithoutAUnitOfTime() throws Exception {
    assertThat(refused(folder, "Time,CH1 (V)\n0,2\n125,4\n250,1\n"))
        .isEqualTo(
            "capture.txt: column 1: the times are whole numbers without a unit, such as 250; state"
                + " capture.time_unit in the job sheet");
  }

  @Test
  void anIntervalOfZero() throws Exception {
    assertThat(refused(folder, "Interval,0,s\nCH1 (V),CH2 (V)\n1,2\n3,4\n2,1\n"))
        .isEqualTo(
            "capture.txt: line 1: the sampling interval is 0, but must be positive; mend the line"
                + " or state the interval");
  }

  @Test
  void edgeTimesThatGoBack() throws Exception {
    assertThat(refused(folder, "edge time (us)\n100\n250\n240\n300\n"))
        .isEqualTo(
            "capture.txt: line 4: the time goes back from 250 µs to 240 µs; edge times must rise."
                + " Split the file there, or name the column a period");
  }

  @Test
  void changesThatGoBack() throws Exception {
    assertThat(refused(folder, "Time (us),D0\n100,0\n250,1\n240,0\n300,1\n"))
        .isEqualTo(
            "capture.txt: line 4: the time goes back from 250 µs to 240 µs; times of changes must"
                + " rise. Split the file there");
  }

  @Test
  void aPeriodOfZero() throws Exception {
    assertThat(refused(folder, "period (us)\n100\n0\n240\n"))
        .isEqualTo(
            "capture.txt: line 3: a period is 0 s, but must be above 0; remove the row, or name"
                + " the column a time");
  }

  @Test
  void timesThatStandStill() throws Exception {
    assertThat(refused(folder, "Time (s),CH1 (V)\n0.5,1.5\n0.5,2.5\n0.5,3.5\n"))
        .isEqualTo(
            "capture.txt: the times of the rows do not rise: 500 ms in the first, 500 ms in the"
                + " last; state the sampling interval");
  }

  @Test
  void bytesThatAreNoText() {
    assertThat(
            org.assertj.core.api.Assertions.catchThrowable(
                () ->
                    CaptureText.understood(
                        folder,
                        "AB\u0001\u0002\u0000\u0003CD",
                        StandardCharsets.ISO_8859_1,
                        ReadingOptions.withDefaults())))
        .isInstanceOf(UnsupportedCaptureException.class)
        .hasMessage(
            "capture.txt: byte 2 is 1, which text does not hold; export the capture as delimited"
                + " text, value change dump or WAV, or state the form of bare numbers in"
                + " [capture.raw] of the job sheet");
  }

  @Test
  void timesInAUnitThatIsNotKnown() throws Exception {
    assertThat(refused(folder, "Time,CH1\n[h],[V]\n0,1.5\n1,-2.25\n"))
        .isEqualTo(
            "capture.txt: line 3: neither a column of times nor a sampling interval was found;"
                + CURE);
  }
}
