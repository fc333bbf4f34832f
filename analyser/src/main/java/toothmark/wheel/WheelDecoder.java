package toothmark.wheel;

import java.util.ArrayList;
import java.util.List;
import toothmark.edges.EdgeTrain;
import toothmark.units.Interval;

/**
 * Names every edge of a train, given the wheel: which tooth it is, or that it is a stray; and puts
 * every tooth that gave no edge in its place.
 *
 * <p>It is not a follower: the reading is the most probable one of the whole record, see {@code
 * docs/methods/decoding.md}.
 */
public final class WheelDecoder {

  /** Edges from which noise and rates are learned. */
  private static final int STUDIED = 1500;

  private static final double SLOPE_MEMORY_DEGREES = 60;

  private WheelDecoder() {}

  /**
   * A decoder with the customary settings.
   *
   * @return the decoder
   */
  public static WheelDecoder withDefaults() {
    return new WheelDecoder();
  }

  /**
   * Decodes a train.
   *
   * @param train edges that are teeth, with whatever strays among them
   * @param pattern the wheel
   * @return every edge named
   */
  public DecodedWheel decode(EdgeTrain train, WheelPattern pattern) {
    EdgeSeries series = EdgeSeries.of(train);
    WheelTemplate wheel = WheelTemplate.of(pattern);
    double memory = Math.max(2, Math.min(10, SLOPE_MEMORY_DEGREES / pattern.pitchDegrees()));
    SpeedFilter filter = new SpeedFilter(memory);
    int n = series.size();
    NoiseStudy study =
        new NoiseStudy(series, wheel, filter, 0, Math.min(n, STUDIED))
            .run(NoiseEstimate.of(series, 0, n));
    NoiseModel noise = NoiseStudy.withRates(study.noise(), study.labels());
    ToothFaults faults = OutlyingTeeth.find(series, study.labels(), pattern);
    boolean faulty = faults.any() && study.supports(pattern, faults);
    WheelTemplate as = faulty ? WheelTemplate.of(pattern, faults) : wheel;
    Labelling labels =
        new Labeller(series, as, noise, filter, Labeller.Effort.THOROUGH)
            .label(0, n)
            .renumbered(as, pattern.teeth());
    return new EventAssembly(series, pattern, labels).assemble();
  }

  static final class EventAssembly {
    private static final int MOST_TURNS_BRIDGED = 3;
    private final EdgeSeries series;
    private final WheelPattern pattern;
    private final Labelling labels;
    private final ToothEvents.Builder events = new ToothEvents.Builder();
    private final List<Interval> undecided = new ArrayList<>();

    EventAssembly(EdgeSeries series, WheelPattern pattern, Labelling labels) {
      this.series = series;
      this.pattern = pattern;
      this.labels = labels;
    }

    DecodedWheel assemble() {
      TurnCount seen = TurnCount.of(series, labels, pattern);
      int stray = 0;
      for (int i = 0; i < seen.size(); i++) {
        int e = seen.edges[i];
        for (; stray < e; stray++) {
          addStray(stray, i == 0 ? -1 : seen.revolution(seen.counts[i - 1]));
        }
        stray = e + 1;
        addSeen(seen, i);
        if (i + 1 < seen.size() && !seen.fresh[i + 1]) {
          stray = bridge(seen, i, stray);
        } else if (i + 1 < seen.size()) {
          undecided.add(new Interval(seen.times[i], seen.times[i + 1]));
        }
      }
      for (; stray < series.size(); stray++) {
        addStray(stray, seen.size() == 0 ? 0 : seen.revolution(seen.counts[seen.size() - 1]));
      }
      ToothEvents named = events.build();
      return new DecodedWheel(pattern, named, GeometryFit.learn(named, pattern), undecided);
    }

    private int bridge(TurnCount seen, int i, int firstStray) {
      long lost = seen.counts[i + 1] - seen.counts[i] - 1;
      if (lost == 0) {
        return firstStray;
      }
      int turns = 0;
      LossBridge best = LossBridge.between(seen, i, 0);
      if (lost > pattern.teeth() / 2) {
        for (int r = -3; r <= 3; r++) {
          if (r != 0 && seen.degrees[i + 1] - seen.degrees[i] + 360.0 * r > 0) {
            LossBridge b = LossBridge.between(seen, i, r);
            if (b.bulge() < best.bulge()) {
              best = b;
              turns = r;
            }
          }
        }
      }
      if (turns != 0) {
        seen.shiftTurns(i + 1, turns);
        lost = seen.counts[i + 1] - seen.counts[i] - 1;
      }
      int stray = firstStray;
      if (lost > (long) MOST_TURNS_BRIDGED * pattern.teeth()) {
        undecided.add(new Interval(seen.times[i], seen.times[i + 1]));
        return stray;
      }
      for (long m = 1; m <= lost; m++) {
        long count = seen.counts[i] + m;
        double t = best.timeAt(seen.degreesOf(count) - seen.degrees[i]);
        t = Math.min(Math.max(t, seen.times[i]), seen.times[i + 1]);
        while (stray < seen.edges[i + 1] && series.times[stray] <= t) {
          addStray(stray++, seen.revolution(count - 1));
        }
        events.add(
            new ToothEvent(
                t, 0, ToothKind.MISSING, seen.tooth(count), seen.revolution(count), 1, 0));
      }
      return stray;
    }

    private void addSeen(TurnCount seen, int i) {
      int e = seen.edges[i];
      events.add(
          new ToothEvent(
              series.times[e],
              series.uncertainties[e],
              ToothKind.SEEN,
              seen.tooth(seen.counts[i]),
              seen.revolution(seen.counts[i]),
              labels.confidences[e],
              series.strengths[e]));
    }

    private void addStray(int e, int revolution) {
      events.add(
          new ToothEvent(
              series.times[e],
              series.uncertainties[e],
              ToothKind.STRAY,
              0,
              revolution,
              labels.confidences[e],
              series.strengths[e]));
    }
  }
}
