package toothmark.desktop;

import java.awt.Dimension;
import java.awt.Toolkit;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import javax.swing.RepaintManager;
import javax.swing.SwingUtilities;
import toothmark.chart.Ink;

/**
 * Opens a sound file of 100 million samples in each of three channels in a real window at 1600 by
 * 900: when something is in view, when all of it is, when it is examined, how long the window was
 * ever deaf until then, how much heap it took, and how long a frame of the whole window takes with
 * the examination in it. Needs a display. Argument: a folder with room for 600 MB.
 */
public final class OpenBenchmark {

  private static final int SIZE = 100_000_000;
  private static final int CHANNELS = 3;
  private static final int RATE = 1_000_000;
  private static final int PROBE_MS = 5;
  private static final long PATIENCE_MS = 300_000;
  private static final String EXAMINING = Phrases.of("progress.examining");

  private OpenBenchmark() {}

  /** Prints the figures. */
  public static void main(String[] arguments) throws Exception {
    Path file = Files.createTempFile(Path.of(arguments[0]), "long-", ".wav");
    try {
      write(file);
      SwingUtilities.invokeAndWait(() -> Look.wear(Ink.LIGHT));
      try (DrivenWindow window = DrivenWindow.show(new Dimension(1600, 900))) {
        open(window, file);
      }
    } finally {
      Files.delete(file);
    }
    System.exit(0);
  }

  private static void open(DrivenWindow window, Path file) throws InterruptedException {
    AtomicLong first = new AtomicLong();
    AtomicLong whole = new AtomicLong();
    long start = System.nanoTime();
    window.on(
        w -> {
          w.model.bench.session.watch(s -> first.compareAndSet(0, System.nanoTime() - start));
          w.model.bench.grown.watch(n -> whole.set(System.nanoTime() - start));
          w.model.bench.open(Request.of(file));
        });
    Deafness reading = new Deafness(window);
    while (whole.get() == 0 || doing(window).filter(d -> !d.equals(EXAMINING)).isPresent()) {
      reading.probe();
    }
    say(
        "opening 3 x 100 million samples: something in view after %.2f s, all of it after %.1f s,"
            + " %s; heap at most %.0f MiB until then%n",
        first.get() * 1e-9, whole.get() * 1e-9, reading, peakMebibytes());
    Deafness examining = new Deafness(window);
    while (doing(window).isPresent()) {
      examining.probe();
    }
    boolean found = window.ask(w -> w.model.examination().isPresent());
    say(
        "examined after %.1f s%s: %s; heap at most %.0f MiB until then%n",
        (System.nanoTime() - start) * 1e-9,
        found ? "" : " WITHOUT A RESULT",
        examining,
        peakMebibytes());
    frames(window);
  }

  /** How long the window took at most to do what it was asked for. */
  private static final class Deafness {

    private final DrivenWindow window;
    private final long until = System.currentTimeMillis() + PATIENCE_MS;
    private long deaf;
    private long busy;
    private long used;

    Deafness(DrivenWindow window) {
      this.window = window;
      used = window.ask(w -> ownProcessorNanos());
    }

    void probe() throws InterruptedException {
      long asked = System.nanoTime();
      window.run("zoomIn");
      window.run("showAll");
      deaf = Math.max(deaf, System.nanoTime() - asked);
      long now = window.ask(w -> ownProcessorNanos());
      busy = Math.max(busy, now - used);
      used = now;
      Thread.sleep(PROBE_MS);
      if (System.currentTimeMillis() > until) {
        throw new IllegalStateException("not done after five minutes");
      }
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "window deaf for %.0f ms at most, of which at most %.0f ms its own work",
          deaf * 1e-6,
          busy * 1e-6);
    }
  }

  /** Moves and zooms the view; a frame ends when every part of the window that follows is drawn. */
  private static void frames(DrivenWindow window) {
    Random random = new Random(7);
    FrameBenchmark.Timed timed = new FrameBenchmark.Timed();
    window.run("trace");
    timed.run(
        frame ->
            window.on(
                w -> {
                  TimeView next = FrameBenchmark.next(w.model.view.get().orElseThrow(), random);
                  frame.accept(
                      () -> {
                        w.model.view.set(Optional.of(next));
                        RepaintManager.currentManager(w.frame).paintDirtyRegions();
                        Toolkit.getDefaultToolkit().sync();
                      });
                }));
    timed.report("the whole window, examined");
  }

  private static long ownProcessorNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static Optional<String> doing(DrivenWindow window) {
    return window.ask(w -> w.model.bench.progress.get().map(Bench.Progress::doing));
  }

  private static double peakMebibytes() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .map(MemoryPoolMXBean::getPeakUsage)
            .mapToLong(u -> u.getUsed())
            .sum()
        / 1048576.0;
  }

  /** A wave of a 36-1 wheel at 1000 rev/min, and a little of it in the other channels. */
  private static void write(Path file) throws IOException {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
      out.write(header());
      int turn = RATE * 60 / 1000;
      ByteBuffer frames =
          ByteBuffer.allocate(turn * CHANNELS * Short.BYTES).order(ByteOrder.LITTLE_ENDIAN);
      for (int i = 0; i < turn; i++) {
        double teeth = 36.0 * i / turn;
        double wave = teeth < 35 ? Math.sin(2 * Math.PI * teeth) : 0;
        for (int c = 1; c <= CHANNELS; c++) {
          frames.putShort((short) (20_000 * wave / c));
        }
      }
      int left = SIZE;
      while (left > 0) {
        int n = Math.min(left, turn);
        out.write(frames.array(), 0, n * CHANNELS * Short.BYTES);
        left -= n;
      }
    }
  }

  private static byte[] header() {
    int bytes = SIZE * CHANNELS * Short.BYTES;
    return ByteBuffer.allocate(44)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put("RIFF".getBytes(StandardCharsets.US_ASCII))
        .putInt(36 + bytes)
        .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
        .putInt(16)
        .putShort((short) 1)
        .putShort((short) CHANNELS)
        .putInt(RATE)
        .putInt(RATE * CHANNELS * Short.BYTES)
        .putShort((short) (CHANNELS * Short.BYTES))
        .putShort((short) 16)
        .put("data".getBytes(StandardCharsets.US_ASCII))
        .putInt(bytes)
        .array();
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format, values);
  }
}
