package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareCommandTest {

  private static final Path SAMPLES = Path.of("..", "signal-samples");

  private static final List<String> QUESTIONS =
      List.of(
          "Does the signal look as before?",
          "Do the teeth stand as before?",
          "Did it turn as fast?",
          "Does the spark follow the command as before?");

  private static final Pattern CAPTION = Pattern.compile("(?s)<figcaption>.*?</figcaption>");

  @TempDir private Path folder;

  /** The one sample has its sensor wires swapped, the other has nothing wrong. */
  @Test
  void aCaptureAndAResultFolderAreCompared() throws IOException {
    Path before = folder.resolve("before");
    CommandRun.of("examine", sample("leads-swapped"), "--out", before, "--quiet");

    CommandRun run =
        CommandRun.of("compare", before, sample("clean-idle"), "--out", folder.resolve("page"));

    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("One fault gone, no fault new.");
    assertThat(run.out()).contains("gone   fault  The crank sensor is wired the wrong way round.");
    assertThat(Files.readString(folder.resolve("page").resolve("compare.html")))
        .contains("<h3>Gone</h3>", "wired the wrong way round")
        .contains(QUESTIONS.subList(0, 3));
  }

  /** One with its mark, one without: what the wheel is off stands in the first one's offset. */
  @Test
  void saysWhereOneSideCountsFromTheToldAngle() throws IOException {
    Path sample = SAMPLES.resolve("refitted-wheel");
    Path marked = sample.resolve("job.toml");
    Path bare = folder.resolve("bare.toml");
    Files.writeString(bare, Files.readString(marked).replace("tdc = \"CH4\"", ""));
    examine(sample, marked, "marked");
    examine(sample, bare, "bare");
    String counted = "Advance is counted from the angle that the controller is told";

    assertThat(CommandRun.of("compare", folder.resolve("marked"), folder.resolve("bare")).out())
        .contains(counted + " in the later and from top dead centre in the earlier:");
    assertThat(CommandRun.of("compare", folder.resolve("bare"), folder.resolve("bare")).out())
        .contains(counted + ", on both sides:");
    assertThat(CommandRun.of("compare", folder.resolve("marked"), folder.resolve("marked")).out())
        .doesNotContain("counted from")
        .doesNotContain("Top dead centre is known");
  }

  /** The bench story's proof. */
  @Test
  void aWheelPutRightIsProvedByTwoExaminations() throws IOException {
    for (String name : List.of("refitted-wheel", "wheel-put-right")) {
      examine(SAMPLES.resolve(name), SAMPLES.resolve(name).resolve("job.toml"), name);
    }

    CommandRun run =
        CommandRun.of(
            "compare", folder.resolve("refitted-wheel"), folder.resolve("wheel-put-right"));

    assertThat(run.out())
        .startsWith("2 faults gone, no fault new.")
        .containsPattern("Alignment error +.*: changed by 3\\.[34]")
        .containsPattern("Spark delay +.*: changed by −(7[89]|[89]\\d|10[0-4]) ± 13 µs");
  }

  private void examine(Path sample, Path job, String out) throws IOException {
    CommandRun run =
        CommandRun.of(
            "examine",
            sample.resolve("capture.csv.gz"),
            "--job",
            job,
            "--log",
            sample.resolve("controller.csv"),
            "--out",
            folder.resolve(out),
            "--quiet");
    assertThat(run.code()).as(run.err()).isZero();
  }

  @Test
  void twoCapturesAreLaidOverEachOther() throws IOException {
    Path job = SAMPLES.resolve("clean-idle").resolve("job.toml");
    CommandRun run =
        CommandRun.of(
            "compare",
            sample("dropped-spanner"),
            sample("clean-idle"),
            "--job",
            job,
            "--out",
            folder);

    assertThat(run.code()).isZero();
    String page = Files.readString(folder.resolve("compare.html"));
    for (String question : QUESTIONS) {
      assertThat(page.split(Pattern.quote("<h3>" + question + "</h3>"), -1)).hasSize(2);
    }
    assertThat(page.split("<svg xmlns", -1)).hasSize(5);
  }

  @Test
  void aFolderOfExaminationsIsFollowedByDate() throws IOException {
    Path all = folder.resolve("all");
    CommandRun.of(
        "examine", sample("clean-idle"), "--out", all.resolve("2026-05-02-mended"), "--quiet");
    CommandRun.of(
        "examine", sample("leads-swapped"), "--out", all.resolve("2026-03-01"), "--quiet");

    CommandRun run = CommandRun.of("compare", all, "--out", folder.resolve("page"));

    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("Moved: ").contains("over 2 examinations.");
    assertThat(run.out().indexOf("2026-03-01")).isLessThan(run.out().indexOf("2026-05-02"));
    assertThat(run.out()).contains("wired the wrong way round. (2026-03-01)");
    assertThat(Files.readString(folder.resolve("page").resolve("drift.html")))
        .contains("<th>2026-05-02</th>", "wired the wrong way round");
  }

  /** What the captions say is taken from what is drawn. */
  @Test
  void resultFoldersAreDrawnAsTheirCapturesAre() throws IOException {
    Path job = SAMPLES.resolve("clean-idle").resolve("job.toml");
    List<Path> captures = List.of(sample("straight-into-the-limiter"), sample("clean-idle"));
    CommandRun.of(
        "compare", captures.get(0), captures.get(1), "--job", job, "--out", folder.resolve("a"));
    for (Path capture : captures) {
      Path out = folder.resolve(capture.getParent().getFileName());
      CommandRun.of("examine", capture, "--job", job, "--out", out, "--quiet");
    }
    Path before = folder.resolve("straight-into-the-limiter");
    Path after = folder.resolve("clean-idle");

    CommandRun.of("compare", before, after, "--out", folder.resolve("b"));

    assertThat(captions("b")).hasSize(4).isEqualTo(captions("a"));

    Files.delete(before.resolve("turns.csv"));
    CommandRun.of("compare", before, after, "--out", folder.resolve("b"));
    assertThat(Files.readString(folder.resolve("b").resolve("compare.html")))
        .contains("The results of straight-into-the-limiter/", "lack tables that earlier versions");
  }

  private List<String> captions(String out) throws IOException {
    String page = Files.readString(folder.resolve(out).resolve("compare.html"));
    return CAPTION.matcher(page).results().map(MatchResult::group).toList();
  }

  /** By name they would stand the other way round, and the change would have the wrong sign. */
  @Test
  void examinationsOfOneDayAreFollowedByTheTimeOfTheirCaptures() throws IOException {
    Instant morning = Instant.parse("2026-05-31T12:00:00Z");
    Path first = copy("refitted-wheel", "z", morning);
    Path second = copy("wheel-put-right", "a", morning.plusSeconds(1800));
    Path third = copy("wheel-put-right", "m", morning.plusSeconds(7200));

    CommandRun.of("examine", first, second, third, "--out", folder.resolve("all"), "--quiet");
    CommandRun drift = CommandRun.of("compare", folder.resolve("all"), "--out", folder);

    assertThat(drift.out())
        .containsSubsequence(" z-capture/", " a-capture/", " m-capture/")
        .contains("Times are when the file of a capture was last written")
        .containsPattern("Alignment error +moved; last less first 3\\.[34]");
    assertThat(Files.readString(folder.resolve("drift.html")))
        .contains("From left to right by time;", "Times are when the file of a capture was");
  }

  private Path copy(String sample, String name, Instant saved) throws IOException {
    Path day = Files.createDirectory(folder.resolve(name));
    Files.copy(SAMPLES.resolve(sample).resolve("job.toml"), day.resolve("job.toml"));
    Path capture = Files.copy(sample(sample), day.resolve(sample(sample).getFileName()));
    Files.setLastModifiedTime(capture, FileTime.from(saved));
    return day;
  }

  @Test
  void capturesOfOneNameAreCalledByTheirFolders() throws IOException {
    Path before = folder.resolve("before");
    Path after = folder.resolve("after");
    for (Path out : List.of(before, after)) {
      CommandRun.of("examine", sample("periods-only"), "--out", out, "--quiet");
    }
    String capture = sample("periods-only").getFileName().toString();

    CommandRun.of("compare", before, after, "--out", folder);
    assertThat(Files.readString(folder.resolve("compare.html")))
        .contains("Before: </span>before/" + capture, "After: </span>after/" + capture);

    CommandRun drift = CommandRun.of("compare", before, after, before, "--out", folder);
    assertThat(drift.out()).contains(" before/" + capture + ": ", " after/" + capture + ": ");
    assertThat(Files.readString(folder.resolve("drift.html")))
        .contains("<td>before/" + capture + "</td>", "<td>after/" + capture + "</td>");
  }

  @Test
  void oneExaminationIsNothingToCompare() throws IOException {
    CommandRun run = CommandRun.of("compare", sample("clean-idle"));
    assertThat(run.code()).isEqualTo(Failures.ARGUMENTS);
    assertThat(run.err()).contains("one examination is nothing to compare; name two or more");
  }

  @Test
  void aFolderWithoutAnExaminationIsSaid() {
    CommandRun run = CommandRun.of("compare", folder, folder);
    assertThat(run.code()).isEqualTo(Failures.INPUT);
    assertThat(run.err()).contains("examination.json: no such file");
  }

  @Test
  void aBrokenExaminationIsSaid() throws IOException {
    Files.writeString(folder.resolve("examination.json"), "{\"schema\": ");
    CommandRun run = CommandRun.of("compare", folder, folder);
    assertThat(run.code()).isNotZero();
    assertThat(run.err()).contains("is broken JSON");
  }

  private static Path sample(String name) throws IOException {
    try (var files = Files.list(SAMPLES.resolve(name))) {
      return files
          .filter(f -> f.getFileName().toString().startsWith("capture."))
          .findFirst()
          .orElseThrow();
    }
  }
}
