package toothmark.desktop;

import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import toothmark.capture.ReadingProgress;

/** Hands a reader's progress on, now and then, as a share from 0 to 1. */
final class Heard implements ReadingProgress {

  private static final long TELL_EVERY_NANOS = 50_000_000L;

  private final BooleanSupplier cancelled;
  private final DoubleConsumer told;
  private long next;

  Heard(BooleanSupplier cancelled, DoubleConsumer told) {
    this.cancelled = cancelled;
    this.told = told;
  }

  @Override
  public void advanced(long bytesRead, long totalBytes) {
    long now = System.nanoTime();
    if (now >= next && totalBytes > 0) {
      next = now + TELL_EVERY_NANOS;
      told.accept((double) bytesRead / totalBytes);
    }
  }

  @Override
  public boolean isCancelled() {
    return cancelled.getAsBoolean();
  }
}
