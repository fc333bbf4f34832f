package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.chart.SampleRun;
import toothmark.examination.Examination;
import toothmark.wheel.ToothEvent;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

class ResultFolderTest {

  @TempDir Path temp;

  @Test
  void makesTheFolderAndItsParents() throws IOException {
    Path folder = temp.resolve("a/b");
    List<Path> written = ResultFolder.write(SampleRun.undecodable(), folder);
    assertThat(written.get(0)).isEqualTo(folder.resolve("report.html"));
    assertThat(names(folder)).containsExactlyInAnyOrderElementsOf(ResultFolder.fileNames());
    assertThat(names(temp.resolve("a"))).containsExactly("b");
  }

  @Test
  void replacesAnEarlierExaminationAndLeavesOtherFilesAlone() throws IOException {
    ResultFolder.write(SampleRun.full(), temp);
    Files.writeString(temp.resolve("notes.txt"), "mine");
    ResultFolder.write(SampleRun.undecodable(), temp);
    assertThat(Files.readString(temp.resolve("teeth.csv")))
        .isEqualTo("time_s,tooth,revolution,kind,angle_deg,rpm\n");
    assertThat(Files.readString(temp.resolve("notes.txt"))).isEqualTo("mine");
    assertThat(names(temp)).hasSize(ResultFolder.fileNames().size() + 1);
  }

  @Test
  void leavesNoDocumentOfAnEarlierExamination() throws IOException {
    List<Path> written =
        ResultFolder.write(SampleRun.undecodable(), temp, ResultFolder.Page.HTML_AND_PDF);
    assertThat(written).contains(temp.resolve("report.pdf")).allMatch(Files::exists);
    ResultFolder.write(SampleRun.undecodable(), temp);
    assertThat(names(temp)).containsExactlyInAnyOrderElementsOf(ResultFolder.fileNames());
  }

  @Test
  void leavesEverythingAsItWasWhenWritingFails() throws IOException {
    ResultFolder.write(SampleRun.undecodable(), temp);
    String before = Files.readString(temp.resolve("examination.json"));
    assertThatThrownBy(() -> ResultFolder.write(unwritable(), temp))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(Files.readString(temp.resolve("examination.json"))).isEqualTo(before);
    assertThat(names(temp)).containsExactlyInAnyOrderElementsOf(ResultFolder.fileNames());
  }

  @Test
  void leavesNoNewFolderWhenWritingFails() throws IOException {
    assertThatThrownBy(() -> ResultFolder.write(unwritable(), temp.resolve("new")))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(names(temp)).isEmpty();
  }

  @Test
  void refusesAFileOrFolderInTheWay() throws IOException {
    Path file = Files.writeString(temp.resolve("file"), "");
    assertThatThrownBy(() -> ResultFolder.write(SampleRun.undecodable(), file))
        .isInstanceOf(NotDirectoryException.class);
    Path folder = Files.createDirectories(temp.resolve("d/report.html")).getParent();
    assertThatThrownBy(() -> ResultFolder.write(SampleRun.undecodable(), folder))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(names(folder)).containsExactly("report.html");
  }

  /** An examination whose last tooth has no time that a table could hold. */
  private static Examination unwritable() {
    Examination e = SampleRun.full();
    ToothEvents teeth =
        new ToothEvents.Builder()
            .add(new ToothEvent(0.1, 0, ToothKind.SEEN, 1, 0, 1, 1))
            .add(new ToothEvent(Double.POSITIVE_INFINITY, 0, ToothKind.SEEN, 2, 0, 1, 1))
            .build();
    return new Examination(
        e.sheet(), e.roles(), e.observations(), e.diagnosis(), Optional.of(teeth));
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(p -> p.getFileName().toString()).toList();
    }
  }
}
