package toothmark.capture.text;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
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
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import toothmark.capture.SampledSignal;
import toothmark.capture.store.BlockPacker;
import toothmark.capture.store.NumberBlock;
import toothmark.capture.store.PackedBlock;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeDirection;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.WheelDecoder;
import toothmark.wheel.WheelPattern;

/**
 * The inner loops of the whole job, each for one number, sample or edge.
 *
 * <p>It lies in the package of the text reader to reach the number parser, which is nobody else's
 * business.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class PartsBenchmark {

  private static final int NUMBERS = 8192;
  private static final int SLOTS = 60;
  private static final int SAMPLES_A_SLOT = 40;
  private static final int TURNS = 60;
  private static final int SAMPLES = TURNS * SLOTS * SAMPLES_A_SLOT;
  private static final int EDGES = TURNS * (SLOTS - 2);
  private static final double INTERVAL = 5e-6;
  private static final WheelPattern WHEEL = WheelPattern.of(SLOTS, 2);

  private final NumberBlock rows = new NumberBlock(NUMBERS);
  private final SteadyRow steady =
      new SteadyRow(new Dialect(Dialect.ONE_COLUMN, '.'), new NumberBlock[] {rows}, true);
  private final Numbers numbers = new Numbers(new Dialect(',', '.'));
  private final BlockPacker packer = new BlockPacker();
  private final NumberBlock block = new NumberBlock(NUMBERS);
  private final double[] samples = new double[NUMBERS];
  private byte[] text;
  private byte[] lines;
  private int[] starts;
  private StoredColumn stored;
  private SampledSignal wave;
  private EdgeTrain train;

  /** Numbers as a recorder writes them, and the wave of a 60-2 wheel with a little noise. */
  @Setup
  public void prepare() throws IOException {
    Random random = new Random(3);
    StringBuilder b = new StringBuilder();
    starts = new int[NUMBERS + 1];
    for (int i = 0; i < NUMBERS; i++) {
      b.append(String.format(Locale.ROOT, "%.3e,", 2.5 * random.nextGaussian()));
      starts[i + 1] = b.length();
    }
    text = (b + ",".repeat(Numbers.PADDING)).getBytes(StandardCharsets.US_ASCII);
    lines =
        new String(text, StandardCharsets.US_ASCII)
            .replace(',', '\n')
            .getBytes(StandardCharsets.US_ASCII);
    steady.from(lines);
    numbers.from(lines);
    for (int p = 0; p < lines.length - Numbers.PADDING; p = readSteadily()) {
      numbers.read(p, 0, rows, steady.rows());
      steady.missed(p, steady.rows());
    }
    stored = new SampleStore(Long.MAX_VALUE).newColumn();
    readNumbers();
    stored.append(pack());
    double[] v = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double slot = (double) i / SAMPLES_A_SLOT;
      boolean tooth = slot % SLOTS < SLOTS - 2;
      v[i] = (tooth ? -2.5 * Math.sin(2 * Math.PI * slot) : 0.02) + 0.01 * random.nextGaussian();
    }
    wave = SampledSignal.of(0, INTERVAL, v);
    train = detect().train(EdgeDirection.RISING);
  }

  /** A number of the text by our general parser. */
  @Benchmark
  @OperationsPerInvocation(NUMBERS)
  public NumberBlock readNumbers() {
    numbers.from(text);
    for (int i = 0; i < NUMBERS; i++) {
      numbers.read(starts[i], 0, block, i);
    }
    return block;
  }

  /** The same as rows of one column, written alike. */
  @Benchmark
  @OperationsPerInvocation(NUMBERS)
  public NumberBlock readRows() {
    if (readSteadily() != lines.length - Numbers.PADDING) {
      throw new IllegalStateException("a row is written otherwise");
    }
    return rows;
  }

  private int readSteadily() {
    return steady.read(0, lines.length - Numbers.PADDING, 0, NUMBERS);
  }

  /** The same by a general library, from bytes. */
  @Benchmark
  @OperationsPerInvocation(NUMBERS)
  public double readNumbersByLibrary() {
    double sum = 0;
    for (int i = 0; i < NUMBERS; i++) {
      sum += JavaDoubleParser.parseDouble(text, starts[i], starts[i + 1] - starts[i] - 1);
    }
    return sum;
  }

  /** The same by the JDK, through a string. */
  @Benchmark
  @OperationsPerInvocation(NUMBERS)
  public double readNumbersByJdk() {
    double sum = 0;
    for (int i = 0; i < NUMBERS; i++) {
      int length = starts[i + 1] - starts[i] - 1;
      sum += Double.parseDouble(new String(text, starts[i], length, StandardCharsets.US_ASCII));
    }
    return sum;
  }

  /** A number of a block that is packed. */
  @Benchmark
  @OperationsPerInvocation(NUMBERS)
  public PackedBlock pack() {
    return packer.pack(block, NUMBERS, 0);
  }

  /** A number of a block that is unpacked. */
  @Benchmark
  @OperationsPerInvocation(NUMBERS)
  public double[] unpack() {
    stored.read(0, samples, 0, NUMBERS);
    return samples;
  }

  /** A sample of a variable-reluctance wave in the search for edges. */
  @Benchmark
  @OperationsPerInvocation(SAMPLES)
  public CrankEdges detect() {
    return EdgeDetector.withDefaults().withKind(SensorKind.VARIABLE_RELUCTANCE).detect(wave);
  }

  /** An edge that is given its tooth. */
  @Benchmark
  @OperationsPerInvocation(EDGES)
  public DecodedWheel decode() {
    return WheelDecoder.withDefaults().decode(train, WHEEL);
  }
}
