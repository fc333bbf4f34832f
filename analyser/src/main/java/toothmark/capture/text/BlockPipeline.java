package toothmark.capture.text;

import java.io.IOException;
import java.util.Arrays;
import toothmark.capture.UnreadableCaptureException;

/**
 * Reads a text once, in blocks cut at line ends, parses the blocks on up to two threads and hands
 * the results over in the order of the file, so that the outcome does not depend on the number of
 * threads.
 */
final class BlockPipeline {

  /** Takes results in the order of the file. */
  interface Taker {
    /**
     * Takes a result.
     *
     * @param parsed valid during the call only
     */
    void take(ParsedText parsed) throws IOException, UnreadableCaptureException;
  }

  /** Size of a block, bytes, that is read at once. */
  static final int BLOCK_BYTES = 512 << 10;

  private static final int LONGEST_LINE = 16 << 20;
  private static final int SPINS = 2000;

  private final TextInput input;
  private final Layout layout;
  private final int blockBytes;
  private final Taker taker;
  private final Object turn = new Object();
  private byte[] carried = new byte[0];
  private int toSkip;
  private boolean ended;
  private int nextToRead;
  private volatile int nextToTake;
  private volatile Throwable failure;

  BlockPipeline(TextInput input, Layout layout, int blockBytes, Taker taker) {
    this.input = input;
    this.layout = layout;
    this.blockBytes = blockBytes;
    this.taker = taker;
    this.toSkip = layout.firstByte();
  }

  /**
   * Reads to the end.
   *
   * @param threads 1 or 2
   */
  void run(int threads) throws IOException, UnreadableCaptureException {
    Thread helper = null;
    if (threads > 1) {
      helper = new Thread(new Worker(), "toothmark-reader");
      helper.setDaemon(true);
      helper.start();
    }
    new Worker().run();
    if (helper != null) {
      join(helper);
    }
    if (failure instanceof IOException e) {
      throw e;
    }
    if (failure instanceof UnreadableCaptureException e) {
      throw e;
    }
    if (failure instanceof RuntimeException e) {
      throw e;
    }
    if (failure instanceof Error e) {
      throw e;
    }
  }

  private static void join(Thread helper) {
    boolean interrupted = false;
    while (true) {
      try {
        helper.join();
        break;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** Reads, parses and hands over one block after the other. */
  private final class Worker implements Runnable {

    private final RowParser parser = new RowParser(input, layout);
    private final ParsedText parsed = new ParsedText();
    private byte[] buffer = new byte[blockBytes + Numbers.PADDING];
    private int end;
    private int sequence;
    private boolean isLast;

    @Override
    public void run() {
      try {
        while (failure == null && readBlock()) {
          parser.parse(buffer, 0, end, isLast, parsed);
          awaitTurn();
          if (failure == null) {
            taker.take(parsed);
          }
          passTurn();
        }
      } catch (IOException | UnreadableCaptureException | RuntimeException | Error e) {
        fail(e);
      }
    }

    /** Fills the buffer with whole lines; false when nothing is left. */
    private boolean readBlock() throws IOException, UnreadableCaptureException {
      synchronized (BlockPipeline.this) {
        if (ended) {
          return false;
        }
        sequence = nextToRead++;
        skip();
        int have = carried.length;
        ensure(Math.max(blockBytes, have + blockBytes / 2));
        System.arraycopy(carried, 0, buffer, 0, have);
        int cut = 0;
        while (cut == 0) {
          int room = buffer.length - Numbers.PADDING - have;
          int n = input.read(buffer, have, room);
          have += n;
          ended = n < room;
          cut = ended ? have : afterLastLine(have);
          if (cut == 0 && !ended) {
            grow(have);
          } else {
            break;
          }
        }
        carried = Arrays.copyOfRange(buffer, cut, have);
        end = cut;
        isLast = ended;
        Arrays.fill(buffer, end, end + Numbers.PADDING, (byte) '\n');
        return true;
      }
    }

    private void ensure(int size) {
      if (buffer.length < size + Numbers.PADDING) {
        buffer = new byte[size + Numbers.PADDING];
      }
    }

    private void grow(int have) throws UnreadableCaptureException {
      if (have > LONGEST_LINE) {
        throw new UnreadableCaptureException(
            input.source().name()
                + ": a line is longer than "
                + (LONGEST_LINE >> 20)
                + " MiB; this is no text with one row for each sample");
      }
      buffer = Arrays.copyOf(buffer, 2 * have + Numbers.PADDING);
    }

    private int afterLastLine(int have) {
      for (int p = have - 1; p >= 0; p--) {
        if (buffer[p] == '\n') {
          return p + 1;
        }
      }
      for (int p = have - 2; p >= 0; p--) {
        if (buffer[p] == '\r') {
          return p + 1;
        }
      }
      return 0;
    }

    private void awaitTurn() {
      for (int i = 0; i < SPINS && nextToTake != sequence && failure == null; i++) {
        Thread.onSpinWait();
      }
      boolean interrupted = false;
      synchronized (turn) {
        while (nextToTake != sequence && failure == null) {
          try {
            turn.wait();
          } catch (InterruptedException e) {
            interrupted = true;
          }
        }
      }
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }

    private void passTurn() {
      synchronized (turn) {
        nextToTake = sequence + 1;
        turn.notifyAll();
      }
    }

    private void fail(Throwable e) {
      awaitTurn();
      synchronized (turn) {
        if (failure == null) {
          failure = e;
        }
        turn.notifyAll();
      }
    }
  }

  /** Passes over the preamble. */
  private void skip() throws IOException, UnreadableCaptureException {
    while (toSkip > 0) {
      toSkip -= input.read(new byte[toSkip], 0, toSkip);
    }
  }
}
