package toothmark.examination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;
import toothmark.capture.StatedLayout;
import toothmark.capture.UnreadableCaptureException;

/** What a job sheet states of the layout of a capture, and what is then read. */
class CaptureTableTest {

  @TempDir Path folder;

  private String read(String text, String toml) throws Exception {
    return read(text.getBytes(StandardCharsets.UTF_8), toml);
  }

  private String read(byte[] bytes, String toml) throws Exception {
    Path file = Files.write(folder.resolve("capture"), bytes);
    StatedLayout layout = JobSheetReader.parse("job.toml", toml).layout();
    try (Capture capture =
        CaptureReader.read(file, ReadingOptions.withDefaults().withLayout(layout))) {
      return CaptureText.describe(capture);
    }
  }

  @Test
  void delimiterAndDecimalMark() throws Exception {
    String list = "t (s);A (V)\n1,000;1,500\n1,001;2,500\n";
    assertThat(read(list, "[capture]\ndelimiter = \";\"\ndecimal_mark = \",\"\n"))
        .isEqualTo("A in V: every 0.001 s from 1.0 s: 1.5 2.5\n");
    assertThat(read(list, "[capture]\ndelimiter = \";\"\ndecimal_mark = \".\"\n"))
        .startsWith("A in V: every 1.0 s from 1000.0 s: 1500.0 2500.0\n");
    assertThat(read("5 1 2 3\n4 2 3 4\n", "[capture]\ndelimiter = \"blanks\"\nrate_hz = 100\n"))
        .startsWith("1: every 0.01 s from 0.0 s: 5.0 4.0\n2: every 0.01 s");
  }

  @Test
  void headerLines() throws Exception {
    String table = "1,2\n3,4\ntime (ms),A (V)\n0,5\n1,6\n2,5.5\n";
    assertThat(read(table, "[capture]\nheader_lines = 3\n"))
        .isEqualTo("A in V: every 0.001 s from 0.0 s: 5.0 6.0 5.5\n");
  }

  @Test
  void intervalOrRate() throws Exception {
    assertThat(read("A (V)\n5\n6\n5.5\n", "[capture]\nrate_hz = 80000\n"))
        .isEqualTo("A in V: every 1.25E-5 s from 0.0 s: 5.0 6.0 5.5\n");
  }

  /**
   * A bare list of whole numbers may be periods, times or samples of any clock: it must be said.
   */
  @Test
  void aBareListOfWholeNumbers() throws Exception {
    String list = "13739\n11904\n10909\n";
    assertThatThrownBy(() -> read(list, ""))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "capture: line 1: neither a column of times nor a sampling interval was found; state"
                + " capture.interval_s or capture.rate_hz in the job sheet, or what the column"
                + " holds: [[capture.columns]] with role = \"period\" or \"time\", and its unit, or"
                + " as scale the seconds that a count lasts");
    assertThat(read(list, "[[capture.columns]]\nrole = \"period\"\nunit = \"us\"\n"))
        .isEqualTo("1: instants 0.0 0.013739 0.025643 0.036552, step 1.0E-6\n");
    assertThat(read(list, "[[capture.columns]]\nrole = \"period\"\nscale = 5e-7\n"))
        .isEqualTo("1: instants 0.0 0.0068695 0.0128215 0.018276, step 5.0E-7\n");
  }

  @Test
  void columnsOtherThanGuessed() throws Exception {
    String table = "u,v,w\n0,10,7\n1,20,8\n3,30,9\n";
    String sheet =
        """
        [[capture.columns]]
        role = "ignored"
        [[capture.columns]]
        role = "time"
        unit = "ms"
        [[capture.columns]]
        name = "crank"
        unit = "mV"
        scale = 2
        offset = -16
        """;
    assertThat(read(table, sheet))
        .isEqualTo("crank in V: every 0.01 s from 0.01 s: -0.002 0.0 0.002\n");
  }

  @Test
  void bareNumbers() throws Exception {
    ByteBuffer b = ByteBuffer.allocate(16).order(ByteOrder.BIG_ENDIAN);
    b.putInt(0x01020304);
    for (int v : new int[] {100, -200, 300, -400, 500, -600}) {
      b.putShort((short) v);
    }
    String sheet =
        """
        [capture]
        rate_hz = 1000
        [capture.raw]
        numbers = "int16"
        byte_order = "big"
        header_bytes = 4
        [[capture.columns]]
        name = "crank"
        unit = "V"
        scale = 0.01
        [[capture.columns]]
        name = "coil"
        """;
    assertThat(read(b.array(), sheet))
        .isEqualTo(
            """
            crank in V: every 0.001 s from 0.0 s: 1.0 3.0 5.0
            coil in count: every 0.001 s from 0.0 s: -200.0 -400.0 -600.0
            ! channel coil holds whole numbers, taken as counts of a converter; nothing says what a \
            count is worth in volts: state scale and unit in [[capture.columns]] of the job sheet
            """);
    String little = sheet.replace("big", "little").replace("= 4", "= 2").replace("int16", "uint8");
    assertThat(read(new byte[] {9, 9, 1, -1, 2, -2, 7}, little))
        .isEqualTo(
            """
            crank in V: every 0.001 s from 0.0 s: 0.01 0.02
            coil: every 0.001 s from 0.0 s: 255.0 254.0
            ! the last 1 bytes do not fill a row of 2, left out
            """);
  }

  @Test
  void bareNumbersThatDoNotFit() {
    String sheet = "[capture]\nrate_hz = 1000\n[capture.raw]\nnumbers = \"float64\"\n";
    assertThatThrownBy(() -> read(new byte[15], sheet))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "capture: 15 bytes are too few for a header of 0 bytes and two rows of 8; correct"
                + " capture.raw in the job sheet");
  }

  @Test
  void moreColumnsThanThereAre() {
    assertThatThrownBy(() -> read("t (s)\n1.5\n2\n", "[[capture.columns]]\n[[capture.columns]]\n"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "capture: 1 column, but the job sheet states 2 ([[capture.columns]]); correct their"
                + " number or capture.delimiter");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[capture]\\ndelimeter = \";\"|job.toml, line 2: capture.delimeter: unknown key; the nearest"
            + " known key is capture.delimiter",
        "[capture]\\ndelimiter = \"::\"|job.toml, line 2: capture.delimiter: must be one character,"
            + " \"tab\" or \"blanks\", got \"::\"",
        "[capture]\\ndecimal_mark = \"'\"|job.toml, line 2: capture.decimal_mark: must be one of"
            + " \".\", \",\", got \"'\"",
        "[capture]\\ninterval_s = 1e-5\\nrate_hz = 100000|job.toml, line 3: capture.rate_hz: states"
            + " the same as capture.interval_s; keep one of the two",
        "[capture]\\nrate_hz = 0|job.toml, line 2: capture.rate_hz: must be a number from"
            + " 2.777777777777778E-4 to 1000000000000, got 0",
        "[[capture.columns]]\\nrole = \"crank\"|job.toml, line 2: capture.columns.role: must be one"
            + " of \"time\", \"period\", \"index\", \"channel\", \"ignored\", got \"crank\"",
        "[[capture.columns]]\\nrole = \"time\"\\noffset = 1|job.toml, line 3: capture.columns.offset:"
            + " is for channels only; remove it from a time",
        "[[capture.columns]]\\nscale = 0|job.toml, line 2: capture.columns.scale: must not be 0;"
            + " state what one count is worth",
        "[capture.raw]\\nheader_bytes = 4|job.toml, line 2: capture.raw.numbers: is missing; state"
            + " how a number is written: [int8, uint8, int16, uint16, int24, int32, uint32, int64,"
            + " uint64, float16, float32, float64]",
      })
  void whatCannotBeUsed(String toml, String message) {
    assertThatThrownBy(() -> JobSheetReader.parse("job.toml", toml.replace("\\n", "\n")))
        .isInstanceOf(JobSheetException.class)
        .hasMessage(message);
  }
}
