package toothmark.cli;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import toothmark.capture.ReadingProgress;

/**
 * A line on the terminal that shows how far a long reading has come; silent when piped or quiet.
 */
final class Progress implements ReadingProgress, AutoCloseable {

  private static final long FIRST_AFTER_NANOS = 700_000_000L;
  private static final long EVERY_NANOS = 200_000_000L;
  private static final double MEGA = 1e6;

  private final PrintStream to;
  private final long start = System.nanoTime();
  private long next = start + FIRST_AFTER_NANOS;
  private int width;
  private int done;

  private Progress(PrintStream to) {
    this.to = to;
  }

  /** Shows progress where standard error is a terminal that nobody asked to be quiet. */
  static Progress onTerminal(boolean quiet) {
    return new Progress(quiet || System.console() == null ? null : System.err);
  }

  @Override
  public void advanced(long bytesRead, long totalBytes) {
    long now = System.nanoTime();
    if (to == null || now < next || bytesRead <= 0) {
      return;
    }
    next = now + EVERY_NANOS;
    double seconds = (now - start) * 1e-9;
    double rate = bytesRead / seconds;
    String line =
        totalBytes > 0
            ? String.format(
                Locale.ROOT,
                "reading %3.0f %%  %.0f MB/s  %.0f s left",
                100.0 * bytesRead / totalBytes,
                rate / MEGA,
                (totalBytes - bytesRead) / rate)
            : String.format(Locale.ROOT, "read %.0f MB  %.0f MB/s", bytesRead / MEGA, rate / MEGA);
    show(line);
  }

  /** Counts one capture of many as done; threads may call it at once. */
  synchronized void examined(Path capture, int of) {
    done++;
    if (to != null) {
      show("examined " + done + " of " + of + "  " + capture.getFileName());
    }
  }

  private void show(String line) {
    int pad = Math.max(0, width - line.length());
    to.print("\r" + line + " ".repeat(pad));
    to.flush();
    width = line.length();
  }

  /** Takes the line off the terminal. */
  void clear() {
    if (width > 0) {
      show("");
      to.print("\r");
      to.flush();
      width = 0;
    }
  }

  @Override
  public void close() {
    clear();
  }
}
