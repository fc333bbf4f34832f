package toothmark.speed;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;

/**
 * The job of the scripts beside this module, on top of our reader: all columns read, falling edges
 * of two channels by interpolation, gaps by the ratio of periods. It prints what they print.
 */
public final class ScriptJob {

  private static final int CHUNK = 8192;
  private static final double GAP = 2;

  private final SampledSignal signal;
  private final double level;
  private final double[] samples = new double[CHUNK];
  private double before;
  private double lastEdge = Double.NaN;
  private double lastPeriod = Double.NaN;
  private long edges;
  private long gaps;

  private ScriptJob(SampledSignal signal, double level) {
    this.signal = signal;
    this.level = level;
    this.before = level;
    for (long first = 0; first < signal.size(); first += CHUNK) {
      int n = (int) Math.min(CHUNK, signal.size() - first);
      signal.read(first, samples, n);
      scan(first, n);
    }
  }

  /**
   * Runs the job.
   *
   * @param arguments the capture; how many times, once when not said, and of several times the wall
   *     and processor seconds of each are printed
   * @throws Exception if it cannot be read
   */
  public static void main(String[] arguments) throws Exception {
    int times = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
    for (int i = 0; i < times; i++) {
      double wall = System.nanoTime() / 1e9;
      double processor = times > 1 ? processorSeconds() : 0;
      run(Path.of(arguments[0]));
      if (times > 1) {
        wall = System.nanoTime() / 1e9 - wall;
        System.out.println(wall + " " + (processorSeconds() - processor));
      }
    }
  }

  private static void run(Path file) throws Exception {
    try (Capture capture = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      CompletableFuture<ScriptJob> meanwhile =
          CompletableFuture.supplyAsync(() -> new ScriptJob(signal(capture, 1), 2.5));
      ScriptJob crank = new ScriptJob(signal(capture, 0), 0);
      ScriptJob coil = meanwhile.join();
      System.out.println(
          crank.edges + " teeth, " + crank.gaps + " gaps, " + coil.edges + " sparks");
    }
  }

  private static double processorSeconds() {
    OperatingSystemMXBean system = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    return system.getProcessCpuTime() / 1e9;
  }

  private static SampledSignal signal(Capture capture, int channel) {
    return (SampledSignal) capture.channels().get(channel).signal();
  }

  private void scan(long first, int n) {
    double last = before;
    for (int i = 0; i < n; i++) {
      double now = samples[i];
      if (last > level && now <= level) {
        edge(signal.timeOf(first + i - 1 + (last - level) / (last - now)));
      }
      last = now;
    }
    before = last;
  }

  private void edge(double time) {
    double period = time - lastEdge;
    gaps += period > GAP * lastPeriod ? 1 : 0;
    edges++;
    lastEdge = time;
    lastPeriod = period;
  }
}
