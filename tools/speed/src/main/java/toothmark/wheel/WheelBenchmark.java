package toothmark.wheel;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import toothmark.edges.EdgeTrain;

/**
 * Naming the edges of a long clean train, each for one edge.
 *
 * <p>It lies in the package of the wheel to reach the search, which is nobody else's business.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class WheelBenchmark {

  private static final WheelPattern WHEEL = WheelPattern.of(60, 2);
  private static final int TURNS = 4000;
  private static final int EDGES = TURNS * 58;
  private static final double SECONDS_A_TURN = 0.02;
  private static final double JITTER_SECONDS = 1e-7;
  private static final double MEMORY_EDGES = 10;

  private static final WheelPattern FOULED = WheelPattern.of(36, 1);
  private static final int FOULED_EDGES = 16_000;
  private static final double STRAYS = 0.3;
  private static final double LOST = 0.05;

  private final EdgeTrain train = train();
  private final EdgeTrain fouled = fouled();

  /** Edges of a 60-2 wheel at 3000 rev/min that hunts a little. */
  private static EdgeTrain train() {
    Random random = new Random(3);
    double[] times = new double[EDGES];
    double[] uncertainties = new double[EDGES];
    double[] strengths = new double[EDGES];
    for (int i = 0; i < EDGES; i++) {
      double turns = i / WHEEL.teeth() + i % WHEEL.teeth() / (double) WHEEL.slots();
      double angle = turns + 0.02 * Math.sin(turns / 7);
      times[i] = SECONDS_A_TURN * angle + JITTER_SECONDS * random.nextGaussian();
      uncertainties[i] = JITTER_SECONDS;
      strengths[i] = 1;
    }
    return new EdgeTrain(times, uncertainties, strengths, new double[EDGES]);
  }

  /**
   * Edges of a 36-1 wheel at 3000 rev/min, all alike, each 0.02 degrees off: to ten teeth three
   * strays, and of twenty teeth one lost.
   */
  private static EdgeTrain fouled() {
    Random random = new Random(5);
    double[] times = new double[FOULED_EDGES];
    int n = 0;
    for (int slot = 0; n < times.length; slot++) {
      double at = SECONDS_A_TURN * (slot + 0.002 * random.nextGaussian()) / FOULED.slots();
      boolean tooth = slot % FOULED.slots() < FOULED.teeth() && random.nextDouble() > LOST;
      if (tooth) {
        times[n++] = at;
      }
      if (n < times.length && random.nextDouble() < STRAYS) {
        times[n++] = SECONDS_A_TURN * (slot + random.nextDouble()) / FOULED.slots();
      }
    }
    Arrays.sort(times);
    double[] uncertainties = new double[FOULED_EDGES];
    double[] strengths = new double[FOULED_EDGES];
    Arrays.fill(uncertainties, JITTER_SECONDS);
    Arrays.fill(strengths, 1);
    return new EdgeTrain(times, uncertainties, strengths, new double[FOULED_EDGES]);
  }

  /** An edge of the train that is given its tooth: all but what is learned of noise and wheel. */
  @Benchmark
  @OperationsPerInvocation(EDGES)
  public int label() {
    return labelled(train, WHEEL);
  }

  /** The same of the train among strays, where nothing goes by the short way. */
  @Benchmark
  @OperationsPerInvocation(FOULED_EDGES)
  public int labelAmongStrays() {
    return labelled(fouled, FOULED);
  }

  /** An edge of the train that is decoded, wheel and noise learned on the way. */
  @Benchmark
  @OperationsPerInvocation(EDGES)
  public DecodedWheel decodeLong() {
    return WheelDecoder.withDefaults().decode(train, WHEEL);
  }

  private static int labelled(EdgeTrain edges, WheelPattern wheel) {
    EdgeSeries series = EdgeSeries.of(edges);
    NoiseModel noise = NoiseEstimate.of(series, 0, series.size());
    WheelTemplate template = WheelTemplate.of(wheel);
    SpeedFilter filter = new SpeedFilter(MEMORY_EDGES);
    return PhaseCheck.label(
            series,
            wheel,
            () -> new Labeller(series, template, noise, filter, Labeller.Effort.SWIFT),
            0,
            series.size())
        .count();
  }
}
