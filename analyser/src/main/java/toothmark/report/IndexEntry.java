package toothmark.report;

import java.util.Optional;
import toothmark.compare.RecordedExamination;

/**
 * What became of one capture among many.
 *
 * @param capture its file, as it was named
 * @param folder name of its result folder beside the index; empty where nothing was written
 * @param exitCode what examining it alone would return
 * @param examination what is on record; empty where nothing was written
 * @param failure what is wrong with the file, one sentence; empty text when it was examined
 */
public record IndexEntry(
    String capture,
    Optional<String> folder,
    int exitCode,
    Optional<RecordedExamination> examination,
    String failure) {

  /**
   * What to say of the capture in a line.
   *
   * @return its verdict, or what is wrong with the file
   */
  public String said() {
    return failure.isEmpty() ? examination.map(RecordedExamination::verdict).orElse("") : failure;
  }

  /**
   * How many findings of one severity there are.
   *
   * @param severity "fault", "watch" or "note"
   * @return 0 or more
   */
  public long count(String severity) {
    return examination.stream()
        .flatMap(e -> e.findings().stream())
        .filter(f -> f.severity().equals(severity))
        .count();
  }
}
