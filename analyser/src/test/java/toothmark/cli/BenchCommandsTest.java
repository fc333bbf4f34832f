package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BenchCommandsTest {

  @TempDir private Path temp;

  /** Workshop example: touches at 21 and 15 are 18 each side, the mark is 3 degrees off. */
  @Test
  void aPistonStopFindsTopDeadCentre() {
    CommandRun run = CommandRun.of("tdc", 21, 15, "--reading-uncertainty", 0.5);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(oneLine(run.out()))
        .contains("the pointer reads 3.00 ± 0.69° before TDC (95 %, 1 pair of touches)")
        .contains("touches 18.0° each side")
        .doesNotContain("Warning");
  }

  @Test
  void severalTouchesAreAveragedAndTheirScatterCounts() {
    CommandRun run = CommandRun.of("tdc", 21, 15, 21.5, 15, 20.5, 15.5);

    assertThat(oneLine(run.out())).contains("2.92 ± 0.95°").contains("3 pairs");
  }

  /** Depth at 25.61 degrees for a stroke of 80 and a rod of 140 mm: 5 mm (Heywood, eq. 2.5). */
  @Test
  void theDepthOfTheStopFollowsFromTheCrankSlider() {
    CommandRun run =
        CommandRun.of("tdc", 25.61, 25.61, "--stroke", 80, "--rod", 140, "--pin-offset", 1);

    assertThat(oneLine(run.out())).contains("5.0 mm below").contains("highest 0.32° after");
  }

  @Test
  void touchesNearTheTopAreWarnedOf() {
    assertThat(oneLine(CommandRun.of("tdc", 10, 8).out()))
        .contains("Warning: that is nearer than 15 degrees");
  }

  @Test
  void anOddNumberOfTouchesIsRefused() {
    CommandRun run = CommandRun.of("tdc", 21, 15, 20);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .startsWith(
            "toothmark: touches come in pairs, before and after TDC; got 3 readings"
                + System.lineSeparator());
  }

  /** gap = 2 - 6e-6 * 120 n at six speeds. */
  @Test
  void aWorksheetPartsOffsetAndDelay() throws IOException {
    Path sheet = temp.resolve("readings.csv");
    Files.writeString(
        sheet,
        """
        speed,commanded,seen
        1000,10,11.28
        2000,10,10.56
        3000,10,9.84
        4000,10,9.12
        5000,10,8.40
        6000,10,7.68
        """);

    CommandRun run = CommandRun.of("strobe", sheet);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(oneLine(run.out()))
        .contains("Offset 2.00 ± 0.91°")
        .contains("Delay 120 ± 39 µs")
        .contains("changes with speed as a fixed delay does");
  }

  @Test
  void aWorksheetWithAWordInItIsNamedByLine() throws IOException {
    Path sheet = temp.resolve("readings.csv");
    Files.writeString(sheet, "speed,commanded,seen\n1000,10,ten\n");

    CommandRun run = CommandRun.of("strobe", sheet);

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err())
        .isEqualToIgnoringNewLines("toothmark: readings.csv, line 2 (seen): \"ten\" is no number");
  }

  @Test
  void aWorksheetWithoutItsColumnsSaysWhichIsMissing() throws IOException {
    Path sheet = temp.resolve("readings.csv");
    Files.writeString(sheet, "rpm,commanded,seen\n1000,10,9\n");

    assertThat(CommandRun.of("strobe", sheet).err())
        .isEqualToIgnoringNewLines(
            "toothmark: readings.csv: no column \"speed\"; the first line must be"
                + " speed,commanded,seen");
  }

  /** Half of the stroke is passed before 90 degrees: 45.836 of 80 mm at a rod ratio of 3.5. */
  @Test
  void pistonTravelIsTabulated() {
    CommandRun run = CommandRun.of("piston", "--stroke", 80, "--rod", 140, "--step", 90);

    assertThat(run.out().lines())
        .contains(
            "     90           45.836          45.836", "    180           80.000          80.000");
  }

  /** 36-1 by hand: 5 BTDC is 85 after tooth 1, 117 degrees of charging begin at 328. */
  @Test
  void thePlannerCountsTeethAndSeesTheGap() {
    CommandRun run = CommandRun.of("firing", "--wheel", "36-1", "--tooth1", 90, "--dwell", 3);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out().lines())
        .contains("       1           33     8.0°              9     5.0°              11");
    assertThat(oneLine(run.out()))
        .contains("Charging takes 117° of the 360° between a coil's sparks, 33 %.")
        .contains(
            "Before the earliest spark, after one as late as can be, 325° are left for it. There is room.")
        .contains("No gap passes while a cylinder may fire: the last tooth passes up to 10.0°")
        .contains("of cylinder 1, 4 at 6500 rev/min and of no cylinder at 200 rev/min.")
        .contains("puts it up to 1.00° early");
  }

  /** On the starter 3 ms are 3.6 degrees: 81.4 after tooth 1 is 1.4 after tooth 9. */
  @Test
  void thePlannerCountsTeethOnTheStarterToo() {
    CommandRun run = CommandRun.of("firing", "--wheel", "36-1", "--tooth1", 90, "--cranking", 200);

    assertThat(run.out().lines())
        .contains("       1            9     1.4°              9     5.0°               0");
    assertThat(oneLine(run.out())).contains("5.00° before TDC at 200 rev/min:");
  }

  /**
   * A twin that fires at 0 and 405: one coil for both has 315 degrees at its shortest, and 280
   * before its earliest spark. Tooth 1 at 20: advances of 40 to 5 stand 20 before to 15 after tooth
   * 1, in the gap of 20 before it.
   */
  @Test
  void thePlannerKnowsUnevenEnginesAndGapsWhereTheyFire() {
    CommandRun run =
        CommandRun.of(
            "firing",
            "--wheel",
            "36-1",
            "--tooth1",
            20,
            "--order",
            "1,2",
            "--angles",
            "0,405",
            "--coil-fires-every",
            360);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(oneLine(run.out()))
        .contains("Charging takes 117° of the 315° between a coil's sparks, 37 %.")
        .contains("280° are left for it. There is room.")
        .contains("A gap passes while cylinder 1 may fire, where timing matters most: the last")
        .contains("up to 20.0° before the spark");
    assertThat(run.out().lines().filter(l -> l.startsWith("       2 ")))
        .as("405 + 20 - 5 is 60 after tooth 1")
        .anyMatch(l -> l.contains("7     0.0°"));
  }

  @Test
  void thePlannerRefusesAnglesThatDoNotFitTheOrder() {
    CommandRun run =
        CommandRun.of(
            "firing", "--wheel", "36-1", "--tooth1", 90, "--order", "1,2", "--angles", "0,405,500");

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("there are 2 cylinders but 3 firing angles");
  }

  @Test
  void theTapeIsAPageOfTheAskedSize() throws IOException {
    Path file = temp.resolve("new/tape.pdf");

    CommandRun run = CommandRun.of("tape", "--diameter", 150, "--paper", "letter", "--out", file);

    assertThat(run.code()).as(run.err()).isZero();
    try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1);
      assertThat(pdf.getPage(0).getMediaBox().getWidth()).isEqualTo(792); // 11 inches
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"tdc", "strobe", "tape", "piston", "firing"})
  void helpHasExamples(String command) {
    CommandRun run = CommandRun.of(command, "--help");

    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Examples:").contains("  toothmark " + command + " ");
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ").replace('\u202f', ' ').replace('\u00a0', ' ');
  }
}
