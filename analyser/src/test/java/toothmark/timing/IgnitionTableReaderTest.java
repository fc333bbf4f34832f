package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.capture.UnreadableCaptureException;

class IgnitionTableReaderTest {

  private static final String TABLE =
      "load \\ rpm,500,1000,3000\n20,10,14,34\n60,8,10,26\n100,5,6,20\n";

  @TempDir Path folder;

  private IgnitionTable read(String text) throws Exception {
    return IgnitionTableReader.read(Files.writeString(folder.resolve("advance.csv"), text));
  }

  @Test
  void nodesAreAsWritten() throws Exception {
    IgnitionTable table = read(TABLE);

    assertThat(table.rpms()).containsExactly(500.0, 1000.0, 3000.0);
    assertThat(table.loads()).containsExactly(20.0, 60.0, 100.0);
    assertThat(table.advance(1000, 60)).isEqualTo(10);
    assertThat(table.advance(3000, 100)).isEqualTo(20);
  }

  /** By hand: at 20 kPa 14 + 20/4 = 19, at 60 kPa 10 + 16/4 = 14; half way between 16.5. */
  @Test
  void betweenNodesItIsBilinear() throws Exception {
    assertThat(read(TABLE).advance(1500, 40)).isCloseTo(16.5, within(1e-12));
  }

  @Test
  void beyondItsEdgesTheEdgeIsHeld() throws Exception {
    IgnitionTable table = read(TABLE);

    assertThat(table.advance(200, 10)).isEqualTo(10);
    assertThat(table.advance(9000, 80)).isCloseTo(23, within(1e-12));
    assertThat(table.isBeyondSpeeds(3000.1)).isTrue();
    assertThat(table.isBeyondSpeeds(3000)).isFalse();
    assertThat(table.isBeyondLoads(19)).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        ";500;1000;3000\\n20;10,0;14,0;34,0\\n60;8;10;26\\n100;5;6;20\\n|semicolons, decimal commas",
        "kPa\\t500\\t1000\\t3000\\n20\\t10\\t14\\t34\\n60\\t8\\t10\\t26\\n100\\t5\\t6\\t20|tabs",
        "# idle side\\n,500,1000,3000,\\n100,5,6,20,\\n60,8,10,26,\\n\\n20,10,14,34,\\n|falling loads"
      })
  void writtenInOtherWaysItIsTheSame(String text, String how) throws Exception {
    IgnitionTable table = read(text.replace("\\n", "\n").replace("\\t", "\t"));

    assertThat(table).as(how).isEqualTo(read(TABLE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        ",500,3000,1000\\n20,1,2,3\\n60,1,2,3"
            + "|, line 1, column 4 (speed): 1000 rev/min comes after 3000 rev/min; put the columns in"
            + " order of rising speed",
        ",500,500\\n20,1,2\\n60,1,2"
            + "|, line 1, column 3 (speed): 500 rev/min comes after 500 rev/min; put the columns in"
            + " order of rising speed",
        ",500,1000\\n20,1,2\\n100,1,2\\n60,1,2"
            + "|, line 4, column 1 (load): 60 comes after 100; put the lines in order of rising or"
            + " falling load",
        ",500,1000\\n20,1,2\\n20,1,2"
            + "|, line 3, column 1 (load): 20 comes after 20; put the lines in order of rising or"
            + " falling load",
        ",500,fast\\n20,1,2\\n60,1,2"
            + "|, line 1, column 3 (speed): \"fast\" is no number; write a speed in rev/min",
        ",500,1000\\nlow,1,2\\n60,1,2"
            + "|, line 2, column 1 (load): \"low\" is no number; write the load of the line",
        ",500,1000\\n20,1,NaN\\n60,1,2"
            + "|, line 2, column 3 (advance): \"NaN\" is no number; write degrees before TDC",
        ",500,1000\\n20,1,2\\n60,1,200"
            + "|, line 3, column 3 (advance): 200° is not from -60 to 90; write degrees before TDC of"
            + " the crank",
        ",500,1000\\n20,1,2\\n60,1"
            + "|, line 3: 1 advances, but there are 2 speeds; write the load and then one advance for"
            + " each speed",
        ",500\\n20,1\\n60,1"
            + "|, line 1: an ignition table needs two or more speeds, got 1; write them in the first"
            + " line, from the second cell on, with comma, semicolon or tab between cells",
        ",500,1000\\n20,1,2"
            + "|: an ignition table needs two or more loads, a line for each, got 1; where load does"
            + " not matter write the same advances at two loads"
      })
  void complaintsNameLineAndCure(String text, String message) {
    assertThatThrownBy(() -> read(text.replace("\\n", "\n")))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("advance.csv" + message);
  }

  @Test
  void anotherEncodingIsNamed() throws Exception {
    Path file = folder.resolve("advance.csv");
    Files.write(file, "°,500,1000\n20,1,2\n".getBytes(StandardCharsets.ISO_8859_1));

    assertThatThrownBy(() -> IgnitionTableReader.read(file))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("advance.csv: not UTF-8; save it as UTF-8 text");
  }
}
