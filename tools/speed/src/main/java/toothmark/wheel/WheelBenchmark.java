package toothmark.wheel;

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

  private final EdgeTrain train = train();
  private final WheelTemplate template = WheelTemplate.of(WHEEL);

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

  /** An edge of the train that is given its tooth: all but what is learned of noise and wheel. */
  @Benchmark
  @OperationsPerInvocation(EDGES)
  public int label() {
    EdgeSeries series = EdgeSeries.of(train);
    NoiseModel noise = NoiseEstimate.of(series, 0, EDGES);
    return PhaseCheck.label(series, WHEEL, () -> labeller(series, noise), 0, EDGES).count();
  }

  /** An edge of the train that is decoded, wheel and noise learned on the way. */
  @Benchmark
  @OperationsPerInvocation(EDGES)
  public DecodedWheel decodeLong() {
    return WheelDecoder.withDefaults().decode(train, WHEEL);
  }

  private Labeller labeller(EdgeSeries series, NoiseModel noise) {
    SpeedFilter filter = new SpeedFilter(MEMORY_EDGES);
    return new Labeller(series, template, noise, filter, Labeller.Effort.SWIFT);
  }
}
