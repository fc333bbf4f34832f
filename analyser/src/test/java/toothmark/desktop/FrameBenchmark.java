package toothmark.desktop;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import toothmark.capture.Channel;
import toothmark.capture.SampledSignal;
import toothmark.chart.Ink;
import toothmark.chart.SignalPyramid;
import toothmark.chart.TraceChart;

/**
 * Times the frames of panning and zooming through a capture of 100 million samples in each of three
 * channels, which are computed when asked for, at 1600 by 900.
 */
public final class FrameBenchmark {

  private static final long SIZE = 100_000_000;
  private static final int CHANNELS = 3;
  private static final int FRAMES = 600;
  private static final int WARM_UP = 100;

  private FrameBenchmark() {}

  /** Prints the figures. */
  public static void main(String[] arguments) {
    long start = System.nanoTime();
    List<TraceChart.Drawn> drawn = new ArrayList<>();
    for (int c = 0; c < CHANNELS; c++) {
      SampledSignal s = signal(c);
      drawn.add(
          new TraceChart.Drawn(
              new Channel("CH" + (c + 1), "V", s), Optional.of(SignalPyramid.of(s, () -> false))));
    }
    say(
        "pyramids of %d x %d samples: %.1f s%n",
        CHANNELS, SIZE, (System.nanoTime() - start) * 1e-9);
    TimeView view = TimeView.all(drawn.get(0).channel().signal().span());
    TraceChart chart = new TraceChart(drawn, view.whole(), Optional.empty(), Ink.LIGHT);
    BufferedImage image = new BufferedImage(1600, 900, BufferedImage.TYPE_INT_RGB);
    TimeView[] now = {view};
    Random random = new Random(7);
    Timed timed = new Timed();
    timed.run(
        frame -> {
          now[0] = next(now[0], random);
          frame.accept(() -> frame(chart, now[0], image));
        });
    timed.report("the trace alone");
    System.gc();
    Runtime r = Runtime.getRuntime();
    say(
        "heap in use %.0f MiB of at most %.0f%n",
        (r.totalMemory() - r.freeMemory()) / 1048576.0, r.maxMemory() / 1048576.0);
  }

  /** The times that frames take, by the clock and of this thread's processor. */
  static final class Timed {

    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private final double[] ms = new double[FRAMES];
    private final double[] cpu = new double[FRAMES];

    /** Lets each frame be made, which hands over what is to be timed. */
    void run(Consumer<Consumer<Runnable>> frame) {
      for (int i = -WARM_UP; i < FRAMES; i++) {
        int at = Math.max(0, i);
        frame.accept(drawing -> time(at, drawing));
      }
    }

    private void time(int at, Runnable drawing) {
      long t = System.nanoTime();
      long c = threads.getCurrentThreadCpuTime();
      drawing.run();
      ms[at] = (System.nanoTime() - t) * 1e-6;
      cpu[at] = (threads.getCurrentThreadCpuTime() - c) * 1e-6;
    }

    void report(String what) {
      report(what + ", by the clock", ms);
      report(what + ", of processor", cpu);
    }

    private static void report(String what, double[] ms) {
      double[] sorted = ms.clone();
      Arrays.sort(sorted);
      say(
          "frames at 1600 x 900, %s: median %.1f ms, 99th percentile %.1f ms, longest %.1f ms%n",
          what, sorted[FRAMES / 2], sorted[FRAMES * 99 / 100], sorted[FRAMES - 1]);
    }
  }

  /** Zooms in and out by turns, from all of it to some hundred samples, and pans in between. */
  static TimeView next(TimeView view, Random random) {
    double middle = view.middle();
    return switch (random.nextInt(4)) {
      case 0 ->
          view.shown().seconds() < 2e-4 ? TimeView.all(view.whole()) : view.zoomed(0.4, middle);
      case 1 -> view.zoomed(1.5, middle);
      default -> view.panned(0.2 * random.nextGaussian());
    };
  }

  private static void frame(TraceChart chart, TimeView view, BufferedImage image) {
    chart.show(view.shown());
    Graphics2D g = image.createGraphics();
    g.setColor(Ink.LIGHT.paper());
    g.fillRect(0, 0, 1600, 900);
    Paint.smooth(g);
    chart.draw(g, new Rectangle2D.Double(0, 0, 1600, 900));
    g.dispose();
  }

  /** A wave whose speed and height change, with hash for noise. */
  private static SampledSignal signal(int channel) {
    return new SampledSignal(0, 1e-6, SIZE) {
      @Override
      public void read(long first, double[] into, int count) {
        for (int i = 0; i < count; i++) {
          long k = first + i;
          long hash = k * 0x9E3779B97F4A7C15L;
          double phase = (k % 1600) / 1600.0 + channel / 3.0;
          into[i] = 8 * (phase - 0.5) * (1 + k * 1e-8) + (hash >>> 40) * 1e-8;
        }
      }
    };
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format, values);
  }
}
