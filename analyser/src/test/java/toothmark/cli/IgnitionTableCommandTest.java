package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.report.ResultFolder;
import toothmark.report.ResultReader;

/**
 * Examines a sweep against an ignition table. What is wrong with the engine is known from its
 * simulator: the wheel 3.4 degrees late, every spark 90 µs later still, load 35 all the time.
 */
class IgnitionTableCommandTest {

  private static final Path SAMPLE = Path.of("..", "signal-samples", "refitted-wheel");
  private static final Path CAPTURE = SAMPLE.resolve("capture.csv.gz");
  private static final Path TABLE = SAMPLE.resolve("ignition-table.csv");
  private static final double WHEEL_DEGREES = -3.4;
  private static final double DELAY_MICROSECONDS = 90;

  @TempDir private Path temp;

  private CommandRun examine(Object... more) {
    Object[] all = new Object[more.length + 4];
    all[0] = "examine";
    all[1] = CAPTURE;
    all[2] = "--out";
    all[3] = temp.resolve("result");
    System.arraycopy(more, 0, all, 4, more.length);
    return CommandRun.of(all);
  }

  private void holdsTheTruth(CommandRun run) throws Exception {
    assertThat(run.code()).as(run.err()).isZero();
    var seen = ResultReader.read(temp.resolve("result"));
    assertThat(seen.figure("Advance offset").orElseThrow().value().value())
        .isCloseTo(WHEEL_DEGREES, within(0.25));
    assertThat(seen.figure("Spark delay").orElseThrow().value().value())
        .isCloseTo(DELAY_MICROSECONDS, within(12.0));
  }

  @Test
  void atTheLoggedLoad() throws Exception {
    CommandRun run =
        examine(
            "--job", SAMPLE.resolve("job.toml"),
            "--log", SAMPLE.resolve("controller.csv"),
            "--table", TABLE);

    holdsTheTruth(run);
    assertThat(run.out())
        .contains("ignition table")
        .contains("ignition-table.csv at the logged loads, which it covers");
  }

  @Test
  void fromTheJobSheetAtAStatedLoad() throws Exception {
    Files.copy(TABLE, temp.resolve("advance.csv"));
    Path job =
        Files.writeString(
            temp.resolve("job.toml"),
            Files.readString(SAMPLE.resolve("job.toml"))
                + "\n[commanded]\ntable = \"advance.csv\"\nload = 35\n");

    CommandRun run = examine("--job", job);

    holdsTheTruth(run);
    assertThat(run.out()).contains("advance.csv at load 35, which it covers");
  }

  /** The map rises by 18° from 1000 to 3600 rev/min; this table ends at 3000. */
  @Test
  void anEdgeThatIsHeldIsSaid() throws IOException {
    Path table =
        Files.writeString(temp.resolve("short.csv"), ",1000,3000\n40,10,23.8462\n80,10,23.8462\n");

    CommandRun run = examine("--job", SAMPLE.resolve("job.toml"), "--table", table, "--load", "35");

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out().replaceAll("\\s+", " "))
        .containsPattern(
            "short.csv at load 35; its edge was held for \\d+ of 164 sparks outside its speeds, 1000"
                + " to 3000 rev/min; its edge was held for 164 of 164 sparks outside its loads, 40 to"
                + " 80");
    assertThat(Files.readString(temp.resolve("result").resolve(ResultFolder.PAGE)))
        .contains("Commanded advance is that of short.csv at load 35");
  }

  @Test
  void withoutALoadItSaysWhatIsMissing() {
    CommandRun run = examine("--job", SAMPLE.resolve("job.toml"), "--table", TABLE);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .isEqualToIgnoringNewLines(
            "toothmark: ignition-table.csv: the load at which to read the ignition table is not"
                + " known; give a controller's log with a column Load, or state one load"
                + " (commanded.load in the job sheet, --load)");
    assertThat(temp.resolve("result")).doesNotExist();
  }

  @Test
  void aLoadWithoutATableIsRefused() {
    CommandRun run = examine("--load", "35");

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .startsWith(
            "toothmark: --load is that of an ignition table, and none is given; add --table");
  }

  @Test
  void aBrokenTableIsUnreadableInput() throws IOException {
    Path table = Files.writeString(temp.resolve("shuffled.csv"), ",3000,1000\n20,1,2\n60,1,2\n");

    CommandRun run = examine("--table", table, "--load", "35");

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err())
        .isEqualToIgnoringNewLines(
            "toothmark: shuffled.csv, line 1, column 3 (speed): 1000 rev/min comes after 3000"
                + " rev/min; put the columns in order of rising speed");
  }

  @Test
  void aJobSheetWhoseTableCannotBeReadSaysWhereAndWhy() throws IOException {
    Path job = Files.writeString(temp.resolve("job.toml"), "[commanded]\ntable = \"lost.csv\"\n");
    Path broken =
        Files.writeString(temp.resolve("broken.toml"), "[commanded]\ntable = \"b.csv\"\n");
    Files.writeString(temp.resolve("b.csv"), ",500,1000\n20,1,x\n60,1,2\n");

    assertThat(examine("--job", job))
        .isEqualTo(
            new CommandRun(
                2,
                "",
                "toothmark: job.toml, line 2: commanded.table: \"lost.csv\" cannot be read; write the"
                    + " name of an ignition table (CSV), from the folder of the job sheet on\n"));
    assertThat(examine("--job", broken).err())
        .isEqualToIgnoringNewLines(
            "toothmark: broken.toml, line 2: commanded.table: b.csv, line 2, column 3 (advance):"
                + " \"x\" is no number; write degrees before TDC");
  }

  @Test
  void aLogWithoutAdvanceNeedsATable() throws IOException {
    Path log = Files.writeString(temp.resolve("load.csv"), "Time,RPM,Load\n1,900,35\n2,900,35\n");

    CommandRun run = examine("--job", SAMPLE.resolve("job.toml"), "--log", log);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("has no column Advance").contains("ignition table");
  }
}
