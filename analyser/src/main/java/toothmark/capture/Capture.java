package toothmark.capture;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import toothmark.units.Interval;

/**
 * What was recorded: some channels over one span of time.
 *
 * @param file name of the file, without its folder
 * @param channels in the order of the file; at least one, names distinct
 * @param reading what the reader understood
 * @param saved when the file was last written; empty where there is none
 */
public record Capture(String file, List<Channel> channels, Reading reading, Optional<Instant> saved)
    implements AutoCloseable {

  /**
   * A capture that is in no file, or of which nobody asks when it was written.
   *
   * @param file as above
   * @param channels as above
   * @param reading as above
   */
  public Capture(String file, List<Channel> channels, Reading reading) {
    this(file, channels, reading, Optional.empty());
  }

  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException if there is no channel
   */
  public Capture {
    channels = List.copyOf(channels);
    if (channels.isEmpty()) {
      throw new IllegalArgumentException("a capture needs at least one channel");
    }
  }

  /**
   * Finds a channel.
   *
   * @param name as the capture writes it
   * @return the channel, or empty when there is none of that name
   */
  public Optional<Channel> channel(String name) {
    return channels.stream().filter(c -> c.name().equals(name)).findFirst();
  }

  /**
   * From the first instant of any channel to just after the last.
   *
   * @return seconds
   */
  public Interval span() {
    double start = Double.POSITIVE_INFINITY;
    double end = Double.NEGATIVE_INFINITY;
    for (Channel c : channels) {
      start = Math.min(start, c.signal().span().startInclusive());
      end = Math.max(end, c.signal().span().endExclusive());
    }
    return new Interval(start, end);
  }

  /** Gives back what the samples hold outside the heap. */
  @Override
  public void close() {
    for (Channel c : channels) {
      if (c.signal() instanceof AutoCloseable held) {
        closeQuietly(held);
      }
    }
  }

  private static void closeQuietly(AutoCloseable held) {
    try {
      held.close();
    } catch (Exception e) {
      throw new IllegalStateException("a sample store could not be closed", e);
    }
  }
}
