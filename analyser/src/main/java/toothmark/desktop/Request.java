package toothmark.desktop;

import java.io.IOException;
import java.nio.file.FileSystemException;
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
import toothmark.examination.JobSheetText;
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
   * Files dropped together: sheet and log are known by their names and go with each of the others,
   * or with what is open where there are no others.
   *
   * @return one for each capture; none if there is none
   */
  static List<Request> of(List<Path> dropped, Optional<Request> open) {
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
    if (captures.isEmpty()) {
      open.ifPresent(captures::add);
    }
    Optional<Path> sheet = job;
    Optional<Path> logged = log;
    return captures.stream()
        .map(c -> new Request(c.capture(), sheet.or(c::job), logged.or(c::log)))
        .toList();
  }

  /** Reads what goes with the capture; what cannot be used of it is left out and told. */
  Given given() throws IOException {
    if (Files.isDirectory(capture)) {
      throw new FileSystemException(capture.toString(), null, Phrases.of("complaint.folder"));
    }
    Given sheet = sheet();
    if (log.isEmpty()) {
      return sheet;
    }
    try {
      return sheet.with(ControllerLogReader.read(log.get()));
    } catch (UnreadableCaptureException | IOException e) {
      return sheet.without(Complaint.ofLeftOut(Complaint.LOG, e));
    }
  }

  private Given sheet() {
    JobSheetText text =
        new JobSheetText(
            job.map(f -> String.valueOf(f.getFileName())).orElse(JobSheetReader.USUAL_NAME),
            "",
            job.orElse(capture).toAbsolutePath().getParent());
    try {
      text = job.isPresent() ? JobSheetText.read(job.get()) : text;
      return new Given(text, text.sheet(), Optional.empty(), Optional.empty());
    } catch (JobSheetException | IOException e) {
      return new Given(text, JobSheet.empty(), Optional.empty(), Optional.empty())
          .without(Complaint.ofLeftOut(Complaint.SHEET, e));
    }
  }

  /**
   * What goes with a capture.
   *
   * @param text the job sheet as it is written; empty for none
   * @param sheet what it states; nothing where it is left out
   * @param log what the controller logged; empty for none
   * @param leftOut what was left out, and why; empty where nothing was
   */
  record Given(
      JobSheetText text, JobSheet sheet, Optional<ControllerLog> log, Optional<Complaint> leftOut) {

    private Given with(ControllerLog next) {
      return new Given(text, sheet, Optional.of(next), leftOut);
    }

    private Given without(Complaint why) {
      return new Given(text, sheet, log, Optional.of(why.and(leftOut)));
    }

    /** Less and less of it, for a capture that it does not fit: no log, no sheet, neither. */
    List<Given> ever(JobSheetException misfit) {
      Given noLog =
          new Given(text, sheet, Optional.empty(), leftOut)
              .without(Complaint.ofLeftOut(Complaint.LOG, misfit));
      Given noSheet =
          new Given(text, JobSheet.empty(), log, leftOut)
              .without(Complaint.ofLeftOut(Complaint.SHEET, misfit));
      Given neither = new Given(text, JobSheet.empty(), Optional.empty(), noSheet.leftOut);
      return log.isPresent() ? List.of(noLog, noSheet, neither) : List.of(noSheet);
    }
  }

  private static Optional<Path> beside(Path folder, String name) {
    Path file = folder.resolve(name);
    return Files.isRegularFile(file) ? Optional.of(file) : Optional.empty();
  }
}
