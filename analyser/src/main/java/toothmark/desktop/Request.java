package toothmark.desktop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.capture.UnreadableCaptureException;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetReader;
import toothmark.timing.ControllerLog;
import toothmark.timing.ControllerLogReader;

/**
 * What to open: a capture, and the job sheet and controller log that go with it.
 *
 * @param capture the capture
 * @param job its job sheet
 * @param log its controller log
 */
record Request(Path capture, Optional<Path> job, Optional<Path> log) {

  private static final String LOG = "controller.csv";

  /** A capture with the sheet and the log that lie beside it under their usual names. */
  static Request of(Path capture) {
    Path folder = capture.toAbsolutePath().getParent();
    return new Request(capture, beside(folder, JobSheetReader.USUAL_NAME), beside(folder, LOG));
  }

  /**
   * Files dropped together: sheet and log are known by their names and go with each of the others.
   *
   * @return one for each capture; none if there is none
   */
  static List<Request> of(List<Path> dropped) {
    List<Request> captures = new ArrayList<>();
    Optional<Path> job = Optional.empty();
    Optional<Path> log = Optional.empty();
    for (Path p : dropped) {
      String name = String.valueOf(p.getFileName()).toLowerCase(Locale.ROOT);
      if (name.endsWith(".toml")) {
        job = Optional.of(p);
      } else if (name.equals(LOG)) {
        log = Optional.of(p);
      } else {
        captures.add(of(p));
      }
    }
    Optional<Path> sheet = job;
    Optional<Path> logged = log;
    return captures.stream()
        .map(c -> new Request(c.capture(), sheet.or(c::job), logged.or(c::log)))
        .toList();
  }

  /** The job sheet; empty for none. */
  Optional<JobSheet> readJob() throws JobSheetException, IOException {
    return job.isPresent() ? Optional.of(JobSheetReader.read(job.get())) : Optional.empty();
  }

  /** What the controller logged; empty for none. */
  Optional<ControllerLog> readLog() throws UnreadableCaptureException, IOException {
    return log.isPresent() ? Optional.of(ControllerLogReader.read(log.get())) : Optional.empty();
  }

  /** Where the job sheet is saved when nothing else is said. */
  Path jobToSave() {
    return job.orElseGet(() -> capture.toAbsolutePath().resolveSibling(JobSheetReader.USUAL_NAME));
  }

  private static Optional<Path> beside(Path folder, String name) {
    Path file = folder.resolve(name);
    return Files.isRegularFile(file) ? Optional.of(file) : Optional.empty();
  }
}
