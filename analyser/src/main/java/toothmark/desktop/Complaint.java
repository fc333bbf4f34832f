package toothmark.desktop;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Optional;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.examination.JobSheetException;

/**
 * What went wrong, in words for the person at the window.
 *
 * @param heading what could not be done
 * @param detail the fact, the place and the cure
 * @param cure the command that helps; empty for none
 */
record Complaint(String heading, String detail, String cure) {

  Complaint(String heading, String detail) {
    this(heading, detail, "");
  }

  /** The job sheet, of what is left out of an examination. */
  static final String SHEET = "sheet";

  /** The controller's log. */
  static final String LOG = "log";

  /** Says why something that goes with a capture is not heeded. */
  static Complaint ofLeftOut(String part, Throwable failure) {
    String heading = Phrases.of("leftOut." + part);
    Complaint why = under(heading, failure);
    String cure = part.equals(SHEET) ? "job" : "openAgain";
    return new Complaint(heading, why.detail, cure);
  }

  /** Both, one below the other. */
  Complaint and(Optional<Complaint> other) {
    return other
        .map(o -> new Complaint(heading, detail + "\n" + o.heading + "\n" + o.detail, cure))
        .orElse(this);
  }

  /** In a row, as a report says it. */
  String sentence() {
    return heading + " " + detail.replace('\n', ' ');
  }

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
