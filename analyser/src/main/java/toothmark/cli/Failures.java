package toothmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
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

  private static final String IN_ITSELF = "an error in the program itself: ";

  private Failures() {}

  /** Makes something of arguments; what it refuses is the caller's mistake. */
  static <T> T checked(CommandSpec spec, Supplier<T> made) {
    try {
      return made.get();
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }

  static int unusableArguments(ParameterException e, String[] arguments) {
    CommandLine command = e.getCommandLine();
    PrintWriter err = command.getErr();
    err.println("toothmark: " + e.getMessage());
    UnmatchedArgumentException.printSuggestions(e, err);
    err.println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ARGUMENTS;
  }

  /**
   * What to say of a failure, and what to return.
   *
   * @param code exit code
   * @param message one sentence
   */
  record Failure(int code, String message) {

    /** The failure that an exception means; empty where it is an error in the program itself. */
    static Optional<Failure> of(Exception e) {
      if (e instanceof JobSheetException) {
        return Optional.of(new Failure(ARGUMENTS, e.getMessage()));
      }
      if (e instanceof UnreadableCaptureException || e instanceof UnsupportedCaptureException) {
        return Optional.of(new Failure(INPUT, e.getMessage()));
      }
      if (e.getCause() instanceof OutOfMemoryError) { // of a stage on another thread
        return Optional.of(new Failure(OTHER, noMemory()));
      }
      if (e instanceof CancellationException) {
        return Optional.of(new Failure(OTHER, "stopped; nothing was written"));
      }
      return e instanceof IOException io
          ? Optional.of(new Failure(ofFile(io), plain(io)))
          : Optional.empty();
    }

    /** The same of any exception, where one line must do. */
    static Failure ofAny(Exception e) {
      return of(e).orElseGet(() -> new Failure(OTHER, IN_ITSELF + e));
    }
  }

  /** What to say when the heap is too small; what was written is whole or not there. */
  static String noMemory() {
    return "a heap of "
        + (Runtime.getRuntime().maxMemory() >> 20)
        + " MiB is too small for this capture, nothing was written; give the Java runtime more, as"
        + " by TOOTHMARK_JAVA_OPTIONS=-Xmx2g";
  }

  static int failed(Exception e, CommandLine command, ParseResult parsed) {
    PrintWriter err = command.getErr();
    Optional<Failure> known = Failure.of(e);
    if (known.isPresent()) {
      err.println("toothmark: " + known.get().message());
      return known.get().code();
    }
    err.println("toothmark: " + IN_ITSELF + e);
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
