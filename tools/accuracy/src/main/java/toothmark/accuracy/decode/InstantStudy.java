package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.accuracy.InMemory;
import toothmark.accuracy.LineChart;
import toothmark.accuracy.LineChart.Scale;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Held;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.accuracy.Table;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.ToothPassing;
import toothmark.simulator.Wheel;

/**
 * How far noise moves a tooth's instant, against the Cramér–Rao bound of the same wave.
 *
 * <p>The bound for the delay of a known wave s in white noise of standard deviation σ is σ over the
 * root of the sum of s′(t)² over its samples (Kay, Fundamentals of Statistical Signal Processing:
 * Estimation Theory, 1993, example 3.13 and section 3.5). The sum is taken over half a pitch to
 * either side of the tooth.
 */
final class InstantStudy implements Study {

  private static final List<String> WHEELS = List.of("36-1", "60-2");
  private static final int[] DECIBELS = {60, 50, 40, 30, 20, 10, 6};
  private static final int CAPTURES = 30;
  private static final int AIM_FROM = 20;
  private static final double AIM = 1.3;

  /** Sums over edges; squares of seconds but for {@code pulls} and {@code degrees}. */
  private record Sums(
      long edges, long lost, double noise, double bound, double pulls, double degrees) {
    static final Sums NOTHING = new Sums(0, 0, 0, 0, 0, 0);

    Sums plus(Sums o) {
      return new Sums(
          edges + o.edges,
          lost + o.lost,
          noise + o.noise,
          bound + o.bound,
          pulls + o.pulls,
          degrees + o.degrees);
    }

    double ratio() {
      return Math.sqrt(noise / bound);
    }
  }

  private record Outcome(CaseName name, Sums sums) {}

  @Override
  public String name() {
    return "instants";
  }

  private static Scenario scenario(CaseName name) {
    String wheel = name.setting().split("_")[0];
    Dice dice = Dice.of(name, "scenario");
    double rpm = dice.logUniform(700, 6000);
    double samples = dice.logUniform(10, 100);
    double slots = Integer.parseInt(wheel.split("-")[0]);
    return Scenario.healthy(name.fileName(), name.seed())
        .withWheel(Wheel.of(wheel, 90.0))
        .withSpeed(SpeedProfile.steady(rpm))
        .withRecorder(Recorder.oscilloscope(samples * slots * rpm / 60.0, 20 * 60.0 / rpm));
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    return LabelStudies.withNoise(scenario(name), decibels(name));
  }

  private static double decibels(CaseName name) {
    return Double.parseDouble(name.setting().split("_")[1]);
  }

  @Override
  public String explain(CaseName name) {
    SimulatedCapture capture = capture(name);
    Sums s = measure(name).sums;
    return Explanation.of(capture, Decoding.of(capture))
        + String.format(
            java.util.Locale.ROOT,
            "instants: %d edges, %d without one, noise %.3g s, bound %.3g s, ratio %.3f%n",
            s.edges,
            s.lost,
            Math.sqrt(s.noise / s.edges),
            Math.sqrt(s.bound / s.edges),
            s.ratio());
  }

  private Outcome measure(CaseName name) {
    SimulatedCapture noisy = capture(name);
    Scenario scenario = scenario(name);
    SimulatedCapture clean =
        Simulation.of(scenario.withRecorder(scenario.recorder().withFront(Recorder.Front.IDEAL)))
            .run();
    double sigma = noisy.scenario().recorder().front().noiseVolts();
    Wave wave = new Wave(clean.crankVolts().toDoubles(), scenario.recorder());
    EdgeTrain once = edges(InMemory.crank(noisy));
    EdgeTrain again = edges(wave.withNoise(sigma, Dice.of(name, "noise")));
    List<ToothPassing> teeth = clean.truth().teeth();
    double offset = medianOffset(once, teeth);
    Sums sums = Sums.NOTHING;
    for (int i = 2; i < teeth.size() - 2; i++) {
      sums = sums.plus(one(teeth, i, new Trains(once, again, offset), wave, sigma));
    }
    return new Outcome(name, sums);
  }

  /** The edges of one wave under two draws of the same noise. */
  private record Trains(EdgeTrain once, EdgeTrain again, double offset) {}

  private static Sums one(List<ToothPassing> teeth, int i, Trains trains, Wave wave, double sigma) {
    ToothPassing tooth = teeth.get(i);
    ToothPassing before = teeth.get(i - 1);
    double perDegree =
        (tooth.seconds() - before.seconds()) / (tooth.crankDegrees() - before.crankDegrees());
    double half = 0.5 * perDegree * wave.pitchDegrees(teeth);
    int a = nearest(trains.once, tooth.seconds());
    int b = nearest(trains.again, tooth.seconds());
    double moved = (trains.once.time(a) - trains.again.time(b)) / Math.sqrt(2);
    if (Math.abs(moved) > 0.5 * half || Math.abs(trains.once.time(a) - tooth.seconds()) > half) {
      return new Sums(0, 1, 0, 0, 0, 0);
    }
    double bound = sigma / Math.sqrt(wave.slopeSquares(trains.once.time(a), half));
    double pull = moved / trains.once.uncertainty(a);
    double degrees = (trains.once.time(a) - tooth.seconds() - trains.offset) / perDegree;
    return new Sums(1, 0, moved * moved, bound * bound, pull * pull, degrees * degrees);
  }

  private static EdgeTrain edges(Signal crank) {
    return EdgeDetector.withDefaults()
        .withKind(SensorKind.VARIABLE_RELUCTANCE)
        .detect(crank)
        .falling();
  }

  private static double medianOffset(EdgeTrain train, List<ToothPassing> teeth) {
    double[] offsets = new double[teeth.size()];
    for (int i = 0; i < offsets.length; i++) {
      double t = teeth.get(i).seconds();
      offsets[i] = train.time(nearest(train, t)) - t;
    }
    Arrays.sort(offsets);
    return offsets[offsets.length / 2];
  }

  private static int nearest(EdgeTrain train, double time) {
    int low = 0;
    int high = train.size() - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (train.time(middle) <= time) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return time - train.time(low) < train.time(high) - time ? low : high;
  }

  /** A clean wave and its slope. */
  private record Wave(double[] volts, Recorder recorder) {

    Signal withNoise(double sigma, Dice dice) {
      double[] noisy = volts.clone();
      for (int i = 0; i < noisy.length; i++) {
        noisy[i] += sigma * dice.normal();
      }
      return SampledSignal.of(recorder.startSeconds(), 1.0 / recorder.sampleRateHz(), noisy);
    }

    double pitchDegrees(List<ToothPassing> teeth) {
      double least = Double.POSITIVE_INFINITY;
      for (int i = 1; i < Math.min(teeth.size(), 70); i++) {
        least = Math.min(least, teeth.get(i).crankDegrees() - teeth.get(i - 1).crankDegrees());
      }
      return least;
    }

    /** Sum of s′² over the samples within reach; five-point differences. */
    double slopeSquares(double seconds, double reach) {
      double rate = recorder.sampleRateHz();
      double place = (seconds - recorder.startSeconds()) * rate;
      int from = (int) Math.max(2, Math.ceil(place - reach * rate));
      int to = (int) Math.min(volts.length - 3, Math.floor(place + reach * rate));
      double sum = 0;
      for (int i = from; i <= to; i++) {
        double slope =
            (8 * (volts[i + 1] - volts[i - 1]) - volts[i + 2] + volts[i - 2]) * rate / 12.0;
        sum += slope * slope;
      }
      return sum;
    }
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(
        "Instants against the Cramér–Rao bound",
        """
        Waves of a coil sensor held at 700 to 6000 rev/min, 10 to 100 samples from tooth to tooth, white noise. *Ratio*: standard deviation of an instant under noise, from two draws of it over each wave, over that of the bound σ/√Σs′² for the delay of a known wave within half a pitch to either side (Kay 1993). Nobody who does not know the wave's form reaches 1. The analyser learns the form from the turns of each capture, twenty here. *Stated*: that deviation over the standard uncertainty that the analyser states; 1 is honest, less where it allows for more than noise. *Whole*: all of the error against the tooth's true place, the common lag taken out; below it lies what neighbouring teeth and the gap do to the wave.
        """);
    Table table =
        new Table("wheel, dB", "teeth", "no edge", "ratio", "stated", "noise, µs", "whole, °");
    LineChart chart =
        new LineChart(
            "Scatter of instants over the Cramér–Rao bound",
            new LineChart.Axis("signal over noise of a sample, dB", Scale.LINEAR),
            new LineChart.Axis("ratio to the bound", Scale.LINEAR));
    List<Worst> worst = new ArrayList<>();
    double greatest = 0;
    for (String wheel : WHEELS) {
      for (int decibels : DECIBELS) {
        String setting = wheel + "_" + decibels;
        List<Outcome> outcomes = run.measure(this, setting, run.captures(CAPTURES), this::measure);
        Sums all = outcomes.stream().map(Outcome::sums).reduce(Sums.NOTHING, Sums::plus);
        row(table, wheel + ", " + decibels, all);
        chart.point(wheel, decibels, all.ratio());
        if (decibels >= AIM_FROM) {
          greatest = Math.max(greatest, all.ratio());
          outcomes.forEach(o -> judge(o, worst));
        }
      }
    }
    section.target(
        "scatter of instants over the Cramér–Rao bound, 20 to 60 dB",
        "≤ " + AIM,
        Table.number(greatest, 2),
        Held.when(greatest <= AIM));
    section.table(table);
    section.chart(chart, "accuracy-instants");
    section.worst(worst);
  }

  private static void row(Table table, String setting, Sums all) {
    table.row(
        setting,
        Long.toString(all.edges),
        Long.toString(all.lost),
        Table.number(all.ratio(), 2),
        Table.number(Math.sqrt(all.pulls / all.edges), 2),
        Table.number(1e6 * Math.sqrt(all.noise / all.edges), 3),
        Table.number(Math.sqrt(all.degrees / all.edges), 4));
  }

  private static void judge(Outcome o, List<Worst> worst) {
    if (o.sums.ratio() > AIM) {
      worst.add(
          new Worst(
              o.name,
              o.sums.ratio(),
              "ratio "
                  + Table.number(o.sums.ratio(), 2)
                  + ", "
                  + o.sums.lost
                  + " without an edge"));
    }
  }
}
