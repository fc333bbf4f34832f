package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.LevelChanges.Level;

/**
 * The input stage of a logger or logic probe: makes levels of the sensor's voltage.
 *
 * <p>For a coil sensor it arms above a share of the last peak and lets go at the falling zero
 * crossing, the common principle of such circuits (LM1815 data sheet, SNOSBU8F): high while armed.
 * For a switching sensor it has two fixed thresholds.
 */
abstract class Conditioner {
  /** One level change, found between samples. */
  private interface Change {
    void at(double sample, Level level);
  }

  private static final double ARM_SHARE = 0.4;
  private static final double FLOOR_VOLTS = 0.05;
  private static final double PEAK_DECAY_SECONDS = 0.08;
  private static final double LOW_VOLTS = 1.5;
  private static final double HIGH_VOLTS = 3.5;

  private final Level timed;

  private Conditioner(Level timed) {
    this.timed = timed;
  }

  static Conditioner of(Sensor sensor) {
    if (sensor instanceof Sensor.Hall hall) {
      return new Thresholds(hall.timedEdge() == Sensor.Edge.RISING ? Level.HIGH : Level.LOW);
    }
    return new ArmedZeroCrossing();
  }

  abstract Level scan(double[] volts, double rateHz, Change change);

  /** The levels as a sampler keeps them, in capture time. */
  LevelChanges levels(double[] volts, Recorder recorder) {
    List<Double> ticks = new ArrayList<>();
    Level first =
        scan(volts, recorder.sampleRateHz(), (sample, level) -> ticks.add(Math.ceil(sample)));
    double[] seconds = new double[ticks.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = ticks.get(i) / recorder.sampleRateHz();
    }
    LevelChanges exact = new LevelChanges(first, seconds);
    return exact.sampled(recorder.sampleRateHz(), 0.0, volts.length).moved(recorder.startSeconds());
  }

  /** The timed edges in capture time, on the recorder's clock. */
  List<Double> timedEdges(double[] volts, Recorder recorder) {
    List<Double> edges = new ArrayList<>();
    double rate = recorder.sampleRateHz();
    scan(
        volts,
        rate,
        (sample, level) -> {
          if (level == timed) {
            edges.add(Math.ceil(sample) / rate + recorder.startSeconds());
          }
        });
    return edges;
  }

  private static final class Thresholds extends Conditioner {
    Thresholds(Level timed) {
      super(timed);
    }

    @Override
    Level scan(double[] volts, double rateHz, Change change) {
      Level level = volts[0] > 0.5 * (LOW_VOLTS + HIGH_VOLTS) ? Level.HIGH : Level.LOW;
      Level first = level;
      for (int i = 1; i < volts.length; i++) {
        double threshold = level == Level.LOW ? HIGH_VOLTS : LOW_VOLTS;
        boolean over = volts[i] > threshold;
        if (over != (level == Level.HIGH)) {
          level = over ? Level.HIGH : Level.LOW;
          change.at(crossing(volts, i, threshold), level);
        }
      }
      return first;
    }
  }

  private static final class ArmedZeroCrossing extends Conditioner {
    ArmedZeroCrossing() {
      super(Level.LOW);
    }

    @Override
    Level scan(double[] volts, double rateHz, Change change) {
      double decay = StrictMath.exp(-1.0 / (rateHz * PEAK_DECAY_SECONDS));
      double peak = 0.0;
      boolean armed = false;
      for (int i = 1; i < volts.length; i++) {
        peak = Math.max(volts[i], peak * decay);
        if (!armed && volts[i] > Math.max(FLOOR_VOLTS, ARM_SHARE * peak)) {
          armed = true;
          change.at(i, Level.HIGH);
        } else if (armed && volts[i] <= 0.0) {
          armed = false;
          change.at(crossing(volts, i, 0.0), Level.LOW);
        }
      }
      return Level.LOW;
    }
  }

  private static double crossing(double[] volts, int after, double threshold) {
    double before = volts[after - 1];
    return after - 1 + (threshold - before) / (volts[after] - before);
  }
}
