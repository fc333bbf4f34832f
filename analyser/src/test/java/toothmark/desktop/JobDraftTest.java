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
import toothmark.desktop.JobDraft.CoilDraft;
import toothmark.desktop.JobDraft.Field;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;

class JobDraftTest {

  static Stream<Path> sheets() throws Exception {
    try (Stream<Path> folders = Files.list(Path.of("../signal-samples"))) {
      return folders.map(f -> f.resolve("job.toml")).filter(Files::isRegularFile).toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void aSheetIsTheSameAfterItWasShownAndSaved(Path file) throws Exception {
    JobSheet sheet = JobSheetReader.read(file);
    assertThat(JobDraft.of(sheet).sheet()).isEqualTo(sheet);
  }

  @Test
  void anIgnitionTableIsTheSameAfterItWasShownAndSaved(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("advance.csv"), ",500,3000\n20,10,30\n100,5,20\n");
    Path file =
        Files.writeString(
            folder.resolve("job.toml"), "[commanded]\ntable = \"advance.csv\"\nload = 60\n");

    JobSheet sheet = JobSheetReader.read(file);

    assertThat(sheet.commanded().table().orElseThrow().advance(500, 60)).isEqualTo(7.5);
    assertThat(JobDraft.of(sheet).sheet()).isEqualTo(sheet);
  }

  @Test
  void whatWasReadByHandIsTheSameAfterItWasShownAndSaved(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("light.csv"), "speed,commanded,seen\n1000,10,9.5\n");
    Path file =
        Files.writeString(
            folder.resolve("job.toml"),
            "[tdc]\nstop_deg = [-68.5, 108.5]\ntooth1_deg = [0]\nlight = \"light.csv\"\n"
                + "reading_uncertainty_deg = 1\n");

    JobSheet sheet = JobSheetReader.read(file);

    assertThat(sheet.tdc().stops().get(0).beforeDegrees()).isEqualTo(-68.5);
    assertThat(JobDraft.of(sheet).sheet()).isEqualTo(sheet);
  }

  @Test
  void anEmptyFormStatesNothing() throws Exception {
    JobDraft draft = JobDraft.of(JobSheet.empty());
    assertThat(draft.toToml()).isEmpty();
    assertThat(draft.sheet()).isEqualTo(JobSheet.empty());
  }

  @Test
  void wordsKeepTheirQuotesLinesAndBackslashes() throws Exception {
    String words = "said \"hot\"\nC:\\captures\tü\u2009°";
    JobDraft draft = JobDraft.of(JobSheet.empty()).with(Field.NOTES, words);
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
    JobDraft draft = JobDraft.of(JobSheet.empty()).with(field, text);
    assertThat(draft.fault())
        .isEqualTo(Optional.of(new JobDraft.Fault(Optional.of(field), complaint)));
  }

  @ParameterizedTest
  @CsvSource({"'1, 3, 4, 2'", "1-3-4-2", "1 3 4 2", "'[1;3;4;2]'", "1 - 3 - 4 - 2"})
  void aFiringOrderCanBeTypedAsPeopleWriteIt(String text) throws Exception {
    JobDraft draft = JobDraft.of(JobSheet.empty()).with(Field.ORDER, text);
    assertThat(draft.sheet().engine().firingOrder()).containsExactly(1, 3, 4, 2);
  }

  @Test
  void aDecimalCommaIsUnderstood() throws Exception {
    JobDraft draft = JobDraft.of(JobSheet.empty()).with(Field.TOOTH1, "87,5");
    assertThat(draft.sheet().wheel().tooth1BtdcDegrees()).hasValue(87.5);
  }

  @Test
  void aChannelGivenARoleLosesItsOther() {
    JobDraft draft =
        JobDraft.of(JobSheet.empty())
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
    JobDraft draft =
        JobDraft.of(JobSheet.empty())
            .withCoils(List.of(new CoilDraft("coil 1", "CH3", "", "logic")));
    assertThat(draft.fault())
        .isEqualTo(
            Optional.of(
                new JobDraft.Fault(
                    Optional.empty(),
                    "coils.cylinders: each coil needs the cylinders that it fires, such as"
                        + " [1, 4]")));
  }
}
