package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.desktop.JobDraft.Field;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.examination.JobSheetText;

class JobDraftTest {

  private static final JobDraft NOTHING = JobDraft.empty(Path.of(""));

  static Stream<Path> sheets() throws Exception {
    try (Stream<Path> folders = Files.list(Path.of("../signal-samples"))) {
      return folders.map(f -> f.resolve("job.toml")).filter(Files::isRegularFile).toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void aSheetThatWasOnlyShownIsSavedToTheLetter(Path file) throws Exception {
    JobDraft draft = JobDraft.of(JobSheetText.read(file));
    assertThat(draft.text(file.toAbsolutePath().getParent()).toml())
        .isEqualTo(Files.readString(file));
    assertThat(draft.sheet()).isEqualTo(JobSheetReader.read(file));
  }

  /** Every line of each sheet but those of the changed keys is there, in its order. */
  @ParameterizedTest
  @MethodSource("sheets")
  void whatIsChangedIsChangedInItsPlace(Path file) throws Exception {
    JobDraft draft =
        JobDraft.of(JobSheetText.read(file))
            .with(Field.NOTES, "call back # on \"Friday\"")
            .with(Field.TOOTH1, "87.5")
            .with(Field.CRANK, "");
    Path home = file.toAbsolutePath().getParent();
    List<String> before = kept(Files.readString(file));
    List<String> after = kept(draft.text(home).toml());
    assertThat(after.stream().filter(before::contains).toList()).isEqualTo(before);
    assertThat(after).doesNotHaveDuplicates();
    JobSheet sheet = draft.sheet();
    assertThat(sheet.heading().notes()).isEqualTo("call back # on \"Friday\"");
    assertThat(sheet.wheel().tooth1BtdcDegrees()).hasValue(87.5);
    assertThat(sheet.channels().crank()).isEmpty();
    assertThat(sheet.coils()).isEqualTo(JobSheetReader.read(file).coils());
  }

  private static List<String> kept(String toml) {
    return toml.lines()
        .filter(l -> !l.isBlank() && !l.startsWith("[[coils]]"))
        .filter(l -> !l.matches("(notes|tooth1_btdc_deg|crank|name|channel|cylinders|signal) .*"))
        .toList();
  }

  private static final String BY_HAND =
      """
      # Mine
      wheel.pattern = "36-1"   # as in the tune

      [engine]
        firing = { order = [1, 3,   # four in line
          4, 2] }
        cylinders = 4

      [commanded]
      table = "maps/advance.csv" # of May
      load = 60

      # the front pair
      [[coils]]
      name = "front"
      channel = "CH2"
      cylinders = [1, 4] # waste spark

      # the rear pair
      [[coils]]
      channel = "CH3"
      cylinders = [2, 3]
      """;

  private JobDraft byHand(Path folder) throws Exception {
    Files.createDirectories(folder.resolve("maps"));
    Files.writeString(folder.resolve("maps/advance.csv"), ",500,3000\n20,10,30\n100,5,20\n");
    return JobDraft.of(JobSheetText.read(Files.writeString(folder.resolve("job.toml"), BY_HAND)));
  }

  @Test
  void commentsAndOrderOfASheetWrittenByHandAreKept(@TempDir Path folder) throws Exception {
    JobDraft draft =
        byHand(folder)
            .with(Field.PATTERN, "60-2")
            .with(Field.CIRCLE, "150")
            .with(Field.ORDER, "1, 2, 4, 3")
            .with(Field.CYLINDERS, "")
            .with(Field.LOAD, "40");
    String expected =
        BY_HAND
            .replace("wheel.pattern = \"36-1\"", "wheel.pattern = \"60-2\"")
            .replace("tune\n", "tune\nwheel.sensor_circle_mm = 150\n")
            .replace("[1, 3,   # four in line\n    4, 2]", "[1, 2, 4, 3]")
            .replace("cylinders = 4\n", "cylinders = \"auto\"\n")
            .replace("load = 60", "load = 40");
    assertThat(draft.text(folder).toml()).isEqualTo(expected);
    assertThat(draft.sheet().wheel().sensorCircleMillimetres()).hasValue(150);
    assertThat(draft.sheet().engine().firingOrder()).containsExactly(1, 2, 4, 3);
    assertThat(draft.sheet().engine().cylinders()).isEmpty();
  }

  @Test
  void coilsAreChangedTakenAwayAndAddedInTheirPlaces(@TempDir Path folder) throws Exception {
    JobDraft open = byHand(folder);
    CoilDraft rear = open.coils().get(1);
    JobDraft without = open.withCoils(List.of(rear.on("CH4"))).withNewCoil("CH5", Optional.empty());
    assertThat(without.text(folder).toml())
        .isEqualTo(
            BY_HAND.replaceAll("(?s)\\[\\[coils\\]\\]\nname.*spark\n", "").replace("CH3", "CH4")
                + "\n[[coils]]\nname = \"coil 2\"\nchannel = \"CH5\"\nsignal = \"logic\"\n");
    JobDraft swapped = open.withCoil(0, "CH3");
    assertThat(swapped.text(folder).toml())
        .isEqualTo(BY_HAND.replace("CH2", "x").replace("CH3", "CH2").replace("x\"", "CH3\""));
  }

  @Test
  void anIgnitionTableIsNamedFromTheFolderOfTheSheetOn(@TempDir Path folder) throws Exception {
    JobDraft draft = byHand(folder);
    assertThat(draft.get(Field.TABLE)).isEqualTo(Path.of("maps/advance.csv").toString());
    assertThat(draft.sheet().commanded().table().orElseThrow().advance(500, 60)).isEqualTo(7.5);
    assertThat(draft.text(folder.resolve("elsewhere")).toml())
        .isEqualTo(BY_HAND.replace("maps/", "../maps/"));
    JobDraft whole = draft.with(Field.TABLE, "").with(Field.TABLE, folder + "/maps/./advance.csv ");
    assertThat(whole.text(folder).toml()).isEqualTo(BY_HAND);
  }

  @Test
  void whatWasReadByHandIsTheSameAfterItWasShownAndSaved(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("light.csv"), "speed,commanded,seen\n1000,10,9.5\n");
    Path file =
        Files.writeString(
            folder.resolve("job.toml"),
            "[wheel]\ntooth1_btdc_deg = 90\n[tdc]\nstop_deg = [-68.5, 108.5]\ntooth1_deg = [0]\n"
                + "light = \"light.csv\"\nreading_uncertainty_deg = 1\n");

    JobDraft draft = JobDraft.of(JobSheetText.read(file));
    JobSheet sheet = JobSheetReader.read(file);

    assertThat(sheet.tdc().stops().get(0).beforeDegrees()).isEqualTo(-68.5);
    assertThat(draft.sheet()).isEqualTo(sheet);
    assertThat(draft.get(Field.LIGHT)).isEqualTo("light.csv");
    assertThat(draft.text(folder.resolve("below")).toml()).contains("light = \"../light.csv\"");
    JobSheet again = draft.with(Field.STOP, "-68, 108").with(Field.READING, "").sheet();
    assertThat(again.tdc().stops().get(0).beforeDegrees()).isEqualTo(-68);
    assertThat(again.tdc().readingUncertaintyDegrees()).isEqualTo(0.5);
  }

  @Test
  void anEmptyFormStatesNothing() throws Exception {
    assertThat(NOTHING.text(Path.of("")).toml()).isEmpty();
    assertThat(NOTHING.sheet()).isEqualTo(JobSheet.empty());
  }

  @Test
  void wordsKeepTheirQuotesLinesAndBackslashes() throws Exception {
    String words = "said \"hot\"\nC:\\captures\tü\u2009°";
    JobDraft draft = NOTHING.with(Field.NOTES, words);
    assertThat(draft.sheet().heading().notes()).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "PATTERN | 36-x | \"36-x\" is not a wheel; write slots-missing, such as 36-1, 60-2, 12+1"
            + " or 36-2-2-2",
        "TOOTH1 | ninety | must be a number from -360 to 720, got ninety",
        "TOOTH1 | 9000 | must be a number from -360 to 720, got 9000",
        "CYLINDERS | 13 | must be a number from 1 to 12, got 13",
        "ORDER | 1, 3, 3, 2 | names a cylinder twice: [1, 3, 3, 2]",
        "TABLE | lost.csv | \"lost.csv\" cannot be read; write the name of an ignition table (CSV),"
            + " from the folder of the job sheet on",
        "LOAD | high | must be a number from -1000000 to 1000000, got high",
        "ADVANCE | 1O | must be a number from -60 to 90, got 1O"
      })
  void aWrongFieldIsNamedWithTheCure(Field field, String text, String complaint) {
    JobDraft draft = NOTHING.with(field, text);
    assertThat(draft.fault())
        .isEqualTo(Optional.of(new JobDraft.Fault(Optional.of(field), complaint)));
  }

  @ParameterizedTest
  @CsvSource({"'1, 3, 4, 2'", "1-3-4-2", "1 3 4 2", "'[1;3;4;2]'", "1 - 3 - 4 - 2"})
  void aFiringOrderCanBeTypedAsPeopleWriteIt(String text) throws Exception {
    JobDraft draft = NOTHING.with(Field.ORDER, text);
    assertThat(draft.sheet().engine().firingOrder()).containsExactly(1, 3, 4, 2);
  }

  /** Touches at −68.5 and 108.5, in every way that is not two ways. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "-68.5, 108.5",
        "-68.5,108.5",
        "-68,5; 108,5",
        "-68,5;108,5",
        "-68,5 108,5",
        "\u221268.5, 108.5",
        "\u221268,5; 108,5",
        "[-68.5 108.5]"
      })
  void numbersCanBeTypedAsPeopleWriteThem(String text) throws Exception {
    var stop =
        NOTHING.with(Field.TOOTH1_READ, "0").with(Field.STOP, text).sheet().tdc().stops().get(0);
    assertThat(stop.beforeDegrees()).isEqualTo(-68.5);
    assertThat(stop.afterDegrees()).isEqualTo(108.5);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "21,15 | must hold numbers from -360 to 360, got 21,15",
        "21,5, 15,5 | must hold numbers from -360 to 360, got 21,5",
      })
  void aCommaThatCouldBeEitherIsAskedAbout(String text, String complaint) {
    assertThat(NOTHING.with(Field.STOP, text).fault())
        .isEqualTo(Optional.of(new JobDraft.Fault(Optional.of(Field.STOP), complaint)));
  }

  @Test
  void aNewCoilTakesAFreeNameAndOneWithoutANameIsCalledByItsPlace() {
    CoilDraft second = new CoilDraft("coil 2", "CH3", "1", "logic");
    JobDraft draft = NOTHING.withCoils(List.of(second)).withNewCoil("CH4", Optional.empty());
    assertThat(draft.name(1)).isEqualTo("coil 3");
    assertThat(draft.withNewCoil("CH5", Optional.of("coil 1")).name(2)).isEqualTo("coil 1");
    assertThat(draft.withNewCoil("CH5", Optional.of("coil 3")).name(2)).isEqualTo("coil 4");
    CoilDraft unnamed = new CoilDraft(" ", "CH3", "1", "logic");
    assertThat(NOTHING.withCoils(List.of(unnamed)).name(0)).isEqualTo("coil 1");
  }

  @Test
  void aDecimalCommaIsUnderstood() throws Exception {
    JobDraft draft = NOTHING.with(Field.TOOTH1, "87,5");
    assertThat(draft.sheet().wheel().tooth1BtdcDegrees()).hasValue(87.5);
  }

  @Test
  void aChannelGivenARoleLosesItsOther() {
    JobDraft draft =
        NOTHING
            .with(Field.CRANK, "CH1")
            .with(Field.TDC, "CH2")
            .withCoils(List.of(new CoilDraft("coil 1", "CH3", "1", "logic")));
    JobDraft next = draft.withRole(Field.CRANK, "CH2");
    assertThat(next.get(Field.CRANK)).isEqualTo("CH2");
    assertThat(next.get(Field.TDC)).isEmpty();
    assertThat(next.withRole(Field.TDC, "CH3").coils()).isEmpty();
  }

  @Test
  void aCoilWithoutCylindersIsNoFieldsFault() {
    JobDraft draft = NOTHING.withCoils(List.of(new CoilDraft("coil 1", "CH3", "", "logic")));
    assertThat(draft.fault())
        .isEqualTo(
            Optional.of(
                new JobDraft.Fault(
                    Optional.empty(),
                    "coils.cylinders: each coil needs the cylinders that it fires, such as"
                        + " [1, 4]")));
  }
}
