package toothmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.concurrent.CancellationException;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.examination.JobSheetException;

/**
 * What each kind of failure prints and returns; the only place that knows exit codes of failures.
 */
final class Failures {

  /** Everything that has no code of its own. */
  static final int OTHER = 1;

  /** Arguments or job sheet that cannot be used. */
  static final int ARGUMENTS = 2;

  /** Input that cannot be read, or of a kind that is not supported. */
  static final int INPUT = 3;

  /** Input was read, but holds no crank signal that can be decoded. */
  static final int NOT_DECODABLE = 4;

  private Failures() {}

  static int unusableArguments(ParameterException e, String[] arguments) {
    CommandLine command = e.getCommandLine();
    PrintWriter err = command.getErr();
    err.println("toothmark: " + e.getMessage());
    UnmatchedArgumentException.printSuggestions(e, err);
    err.println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ARGUMENTS;
  }

  static int failed(Exception e, CommandLine command, ParseResult parsed) {
    PrintWriter err = command.getErr();
    if (e instanceof JobSheetException) {
      err.println("toothmark: " + e.getMessage());
      return ARGUMENTS;
    }
    if (e instanceof UnreadableCaptureException || e instanceof UnsupportedCaptureException) {
      err.println("toothmark: " + e.getMessage());
      return INPUT;
    }
    if (e instanceof CancellationException) {
      err.println("toothmark: stopped; nothing was written");
      return OTHER;
    }
    if (e instanceof IOException io) {
      err.println("toothmark: " + plain(io));
      return ofFile(io);
    }
    err.println("toothmark: an error in the program itself: " + e);
    err.println("Please report it with the lines below and, if you can, the capture.");
    e.printStackTrace(err);
    return OTHER;
  }

  private static int ofFile(IOException e) {
    if (e instanceof NoSuchFileException) {
      return INPUT;
    }
    return e instanceof FileAlreadyExistsException ? ARGUMENTS : OTHER;
  }

  private static String plain(IOException e) {
    if (e instanceof NoSuchFileException n) {
      return n.getFile() + ": no such file; check the name and the folder";
    }
    if (e instanceof AccessDeniedException a) {
      return a.getFile() + ": not allowed; check its permissions";
    }
    if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getFile() + ": " + f.getReason();
    }
    return String.valueOf(e.getMessage());
  }
}
