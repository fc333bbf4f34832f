package toothmark.accuracy.chain;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.report.ResultFolder;
import toothmark.timing.ControllerLog;
import toothmark.timing.ControllerLogReader;

/** Examines a case folder as the command line does, and scores the result files. */
final class CaseRunner {

  private CaseRunner() {}

  static CaseScore run(Path caseFolder) {
    String name = caseFolder.getFileName().toString();
    try {
      Path results = Files.createTempDirectory("accuracy-results");
      try {
        examine(caseFolder, results);
        return CaseScore.of(caseFolder, results);
      } finally {
        delete(results);
      }
    } catch (Exception e) { // whatever goes wrong in the analyser is a result here
      return CaseScore.failed(name, e.getClass().getSimpleName() + ": " + e.getMessage());
    }
  }

  private static void examine(Path folder, Path results) throws Exception {
    JobSheet sheet = JobSheetReader.read(folder.resolve("job.toml"));
    Path log = folder.resolve("controller.csv");
    Optional<ControllerLog> commanded =
        Files.exists(log) ? Optional.of(ControllerLogReader.read(log)) : Optional.empty();
    try (Capture capture = CaptureReader.read(capture(folder), ReadingOptions.withDefaults())) {
      Examination examination = Examiner.examine(capture, sheet, commanded);
      ResultFolder.write(examination, results);
    }
  }

  private static Path capture(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.getFileName().toString().startsWith("capture."))
          .findFirst()
          .orElseThrow(() -> new IOException(folder + " holds no capture"));
    }
  }

  static void delete(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> tree = Files.walk(folder)) {
      all = tree.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.delete(path);
    }
  }
}
