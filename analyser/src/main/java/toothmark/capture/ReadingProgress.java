package toothmark.capture;

/** Hears how far a reader has come, and can stop it. Called on the thread that reads. */
public interface ReadingProgress {

  /** Hears nothing and never stops. */
  ReadingProgress NONE = (bytesRead, totalBytes) -> {};

  /**
   * Called now and then while a file is read.
   *
   * @param bytesRead bytes of the file (as stored, so compressed ones for a compressed file) so far
   * @param totalBytes size of the file
   */
  void advanced(long bytesRead, long totalBytes);

  /**
   * Asked now and then.
   *
   * @return true to stop; the reader then throws {@link java.util.concurrent.CancellationException}
   */
  default boolean isCancelled() {
    return false;
  }
}
