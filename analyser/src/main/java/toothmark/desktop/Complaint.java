package toothmark.desktop;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
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

  /** Says what a failure to read means. */
  static Complaint of(String file, Throwable failure) {
    return under(Phrases.of("complaint.capture", file), failure);
  }

  /** Says what a failure to write means. */
  static Complaint ofWriting(String file, Throwable failure) {
    return under(Phrases.of("complaint.save", file), failure);
  }

  private static Complaint under(String heading, Throwable failure) {
    if (failure instanceof UnreadableCaptureException
        || failure instanceof UnsupportedCaptureException) {
      return new Complaint(heading, failure.getMessage());
    }
    if (failure instanceof JobSheetException) {
      return new Complaint(Phrases.of("complaint.job"), failure.getMessage());
    }
    if (failure instanceof NoSuchFileException e) {
      return new Complaint(heading, Phrases.of("complaint.missing", e.getFile()));
    }
    if (failure instanceof AccessDeniedException e) {
      return new Complaint(heading, Phrases.of("complaint.denied", e.getFile()));
    }
    if (failure instanceof FileSystemException e && e.getReason() != null) {
      return new Complaint(heading, e.getFile() + ": " + e.getReason());
    }
    if (failure instanceof NotDirectoryException || failure instanceof FileAlreadyExistsException) {
      String inTheWay = ((FileSystemException) failure).getFile();
      return new Complaint(heading, Phrases.of("complaint.inTheWay", inTheWay));
    }
    if (failure instanceof IOException) {
      return new Complaint(heading, String.valueOf(failure.getMessage()));
    }
    if (failure instanceof OutOfMemoryError) {
      return new Complaint(heading, Phrases.of("complaint.memory"));
    }
    return new Complaint(Phrases.of("complaint.program"), String.valueOf(failure));
  }
}
