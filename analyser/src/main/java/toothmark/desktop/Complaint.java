package toothmark.desktop;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.examination.JobSheetException;

/**
 * What went wrong, in words for the person at the window.
 *
 * @param heading what could not be done
 * @param detail the fact, the place and the cure
 */
record Complaint(String heading, String detail) {

  /** Says what a failure means. */
  static Complaint of(String file, Throwable failure) {
    if (failure instanceof UnreadableCaptureException
        || failure instanceof UnsupportedCaptureException) {
      return new Complaint(Phrases.of("complaint.capture", file), failure.getMessage());
    }
    if (failure instanceof JobSheetException) {
      return new Complaint(Phrases.of("complaint.job"), failure.getMessage());
    }
    if (failure instanceof NoSuchFileException e) {
      return system(file, Phrases.of("complaint.missing", e.getFile()));
    }
    if (failure instanceof AccessDeniedException e) {
      return system(file, Phrases.of("complaint.denied", e.getFile()));
    }
    if (failure instanceof FileSystemException e && e.getReason() != null) {
      return system(file, e.getFile() + ": " + e.getReason());
    }
    if (failure instanceof IOException) {
      return system(file, String.valueOf(failure.getMessage()));
    }
    if (failure instanceof OutOfMemoryError) {
      return system(file, Phrases.of("complaint.memory"));
    }
    return new Complaint(Phrases.of("complaint.program"), String.valueOf(failure));
  }

  private static Complaint system(String file, String detail) {
    return new Complaint(Phrases.of("complaint.capture", file), detail);
  }
}
