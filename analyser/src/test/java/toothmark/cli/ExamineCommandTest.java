package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.report.ResultFolder;

class ExamineCommandTest {

  @TempDir private Path temp;

  @Test
  void writesEveryResultAndLeavesTheCaptureAsItWas() throws IOException {
    Path capture = periods("periods.csv", 35);
    byte[] before = Files.readAllBytes(capture);
    Path out = temp.resolve("result");

    CommandRun run = CommandRun.of("examine", capture, "--out", out);

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("36-1").contains(out.resolve("report.html").toString());
    assertThat(namesIn(out)).containsExactlyInAnyOrderElementsOf(ResultFolder.fileNames());
    assertThat(Files.readAllBytes(capture)).isEqualTo(before);
  }

  @Test
  void printsNothingWhenAskedToBeQuiet() throws IOException {
    CommandRun run =
        CommandRun.of(
            "examine", periods("periods.csv", 35), "--out", temp.resolve("result"), "--quiet");
    assertThat(run).isEqualTo(new CommandRun(0, "", ""));
  }

  @Test
  void refusesToReplaceItsOwnInput() throws IOException {
    Path capture = periods("teeth.csv", 35);
    byte[] before = Files.readAllBytes(capture);

    CommandRun run = CommandRun.of("examine", capture, "--out", temp);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .isEqualToIgnoringNewLines(
            "toothmark: " + capture + ": would be replaced by a result; choose another folder");
    assertThat(Files.readAllBytes(capture)).isEqualTo(before);
    assertThat(namesIn(temp)).containsExactly("teeth.csv");
  }

  @Test
  void aFileThatIsNotThereIsNamed() {
    Path missing = temp.resolve("not-there.csv");
    CommandRun run = CommandRun.of("examine", missing, "--out", temp.resolve("result"));
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains(missing + ": no such file");
    assertThat(temp.resolve("result")).doesNotExist();
  }

  @Test
  void aFileWithoutNumbersIsRefusedAndLeavesNothing() throws IOException {
    Path letter = Files.writeString(temp.resolve("letter.txt"), "Dear all,\nthe pulley is back.\n");
    CommandRun run = CommandRun.of("examine", letter, "--out", temp.resolve("result"));
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).startsWith("toothmark: letter.txt: no rows of numbers");
    assertThat(temp.resolve("result")).doesNotExist();
  }

  @Test
  void aSignalWithoutTeethHasItsOwnCode() throws IOException {
    StringBuilder flat = new StringBuilder("time,crank\ns,V\n");
    for (int i = 0; i < 2000; i++) {
      flat.append(String.format(Locale.ROOT, "%.5f,0.00%n", i * 1e-5));
    }
    Path capture = Files.writeString(temp.resolve("flat.csv"), flat);
    CommandRun run = CommandRun.of("examine", capture, "--out", temp.resolve("result"));
    assertThat(run.code()).isEqualTo(4);
    assertThat(run.err()).startsWith("toothmark: flat.csv: ");
    assertThat(namesIn(temp.resolve("result"))).contains("report.html");
  }

  @Test
  void aFaultyJobSheetIsRefusedWithItsLine() throws IOException {
    Path job = Files.writeString(temp.resolve("job.toml"), "[wheel]\npattern = \"36-40\"\n");
    CommandRun run =
        CommandRun.of(
            "examine", periods("p.csv", 35), "--job", job, "--out", temp.resolve("result"));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("job.toml").contains("2");
    assertThat(temp.resolve("result")).doesNotExist();
  }

  @Test
  void unknownWordsAreAnsweredWithHelp() {
    assertThat(CommandRun.of("examin").code()).isEqualTo(2);
    assertThat(CommandRun.of("examin").err()).contains("examine").contains("--help");
    assertThat(CommandRun.of("examine", "--help").out())
        .contains("Examples:")
        .contains("Exit codes:");
  }

  /** Tooth periods in microseconds of a wheel with one tooth missing, about 880 rev/min. */
  private Path periods(String name, int teeth) throws IOException {
    StringBuilder out = new StringBuilder("period_us\n");
    for (int turn = 0; turn < 20; turn++) {
      for (int tooth = 0; tooth < teeth; tooth++) {
        double slow = 1 + 0.01 * Math.sin(4 * Math.PI * tooth / (teeth + 1));
        double slots = tooth == 0 ? 2 : 1;
        out.append(String.format(Locale.ROOT, "%.1f%n", 1894 * slots * slow));
      }
    }
    return Files.writeString(temp.resolve(name), out);
  }

  private static List<String> namesIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).toList();
    }
  }
}
