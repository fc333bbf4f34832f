package toothmark.ignition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import toothmark.rotation.AngleTimeline;

/**
 * When a coil is due to fire, by its cylinders and by what it does, and where it did not.
 *
 * <p>A coil with two cylinders 360 degrees apart is due each revolution, one with a single cylinder
 * each second revolution, unless the capture shows it firing on the exhaust stroke as well.
 */
final class FiringGrid {

  /** A spark this much of the shortest interval behind another is a repeated one. */
  private static final double REPEATED_SHARE = 0.35;

  /**
   * Advance may move this much of the interval between a coil's last spark and the window's end.
   */
  private static final double END_SHARE = 0.25;

  private static final int SPARKS_TO_SETTLE_ON = 60;
  private static final int HALVINGS = 60;
  private static final int CUTS = 16;

  private final double[] intervals;
  private final double firstCylinderDegrees;
  private final Placed placed;
  private final Spark.Turn[] turns;

  private FiringGrid(double[] intervals, double firstCylinderDegrees, Placed placed) {
    this.intervals = intervals;
    this.firstCylinderDegrees = firstCylinderDegrees;
    this.placed = placed;
    this.turns = turns(placed, REPEATED_SHARE * Arrays.stream(intervals).min().orElseThrow());
  }

  static FiringGrid of(Coil coil, FiringOrder order, Placed placed) {
    double[] due =
        coil.cylinders().stream().mapToDouble(order::degreesAfterCylinder1).sorted().toArray();
    double[] intervals = new double[due.length];
    for (int i = 0; i < due.length; i++) {
      double next = i + 1 < due.length ? due[i + 1] : due[0] + FiringOrder.CYCLE;
      intervals[i] = next - due[i];
    }
    FiringGrid grid = new FiringGrid(intervals, due[0], placed);
    return due.length == 1 && grid.firesEachRevolution()
        ? new FiringGrid(new double[] {360, 360}, due[0], placed)
        : grid;
  }

  private static Spark.Turn[] turns(Placed placed, double closeDegrees) {
    Spark.Turn[] turns = new Spark.Turn[placed.size()];
    double first = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < turns.length; i++) {
      double at = placed.crank(i).map(CrankPoint::degreesAfterTooth1).orElse(Double.NaN);
      turns[i] = at - first < closeDegrees ? Spark.Turn.REPEATED : Spark.Turn.FIRST;
      first = turns[i] == Spark.Turn.FIRST && !Double.isNaN(at) ? at : first;
    }
    return turns;
  }

  private boolean firesEachRevolution() {
    int[] first = firstSparks();
    double[] steps = new double[Math.max(0, first.length - 1)];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = at(first[i + 1]) - at(first[i]);
    }
    return steps.length > 0 && new Median().evaluate(steps) < 540;
  }

  /** Numbers of the sparks that are no repeated ones and whose angle is known. */
  private int[] firstSparks() {
    return IntStream.range(0, placed.size())
        .filter(i -> turns[i] == Spark.Turn.FIRST && placed.crank(i).isPresent())
        .toArray();
  }

  private double at(int spark) {
    return placed.crank(spark).orElseThrow().degreesAfterTooth1();
  }

  Placed placed() {
    return placed;
  }

  double firstCylinderDegrees() {
    return firstCylinderDegrees;
  }

  Spark.Turn turn(int index) {
    return turns[index];
  }

  double everyDegrees() {
    return FiringOrder.CYCLE / intervals.length;
  }

  List<AbsentSpark> absent(CrankWindow window, AngleTimeline timeline) {
    int[] first = firstSparks();
    List<Double> missing = new ArrayList<>();
    if (first.length == 0) {
      silent(window, missing);
    } else {
      int slot = firstSlot(first);
      before(at(first[0]), slot, window, missing);
      for (int i = 1; i < first.length; i++) {
        int steps = steps(at(first[i]) - at(first[i - 1]), slot);
        if (timeline.coversAll(placed.time(first[i - 1]), placed.time(first[i]))) {
          between(first[i - 1], first[i], slot, steps, missing);
        }
        slot += steps;
      }
      after(at(first[first.length - 1]), slot, window, missing);
    }
    return place(missing, timeline);
  }

  /** A coil without any spark was due wherever the firing order puts it among the others. */
  private void silent(CrankWindow window, List<Double> missing) {
    if (!(window.toDegrees() > window.fromDegrees())) {
      return;
    }
    double at = window.cylinder1Degrees() + firstCylinderDegrees;
    at -= Math.floor((at - window.fromDegrees()) / FiringOrder.CYCLE) * FiringOrder.CYCLE;
    for (int slot = 0; at <= window.toDegrees(); slot++) {
      missing.add(at);
      at += interval(slot);
    }
  }

  /** Which of the coil's cylinders fired first: the one with which all intervals fit best. */
  private int firstSlot(int[] first) {
    int best = 0;
    double bestMisfit = Double.POSITIVE_INFINITY;
    for (int start = 0; start < intervals.length; start++) {
      double misfit = 0;
      int slot = start;
      for (int i = 1; i < Math.min(first.length, SPARKS_TO_SETTLE_ON); i++) {
        double turned = at(first[i]) - at(first[i - 1]);
        int steps = steps(turned, slot);
        misfit += Math.abs(turned(slot, steps) - turned);
        slot += steps;
      }
      if (misfit < bestMisfit - 1e-9) {
        bestMisfit = misfit;
        best = start;
      }
    }
    return best;
  }

  private double interval(int slot) {
    return intervals[Math.floorMod(slot, intervals.length)];
  }

  private double turned(int slot, int steps) {
    double sum = 0;
    for (int i = 0; i < steps; i++) {
      sum += interval(slot + i);
    }
    return sum;
  }

  /** How many firings on a spark is, at least one, by the angle turned since the one before. */
  private int steps(double degrees, int slot) {
    int steps = 1;
    double sum = interval(slot);
    while (sum + interval(slot + steps) / 2 < degrees) {
      sum += interval(slot + steps);
      steps++;
    }
    return steps;
  }

  /** What is missing between two sparks, unless some there came whose angle is not known. */
  private void between(int from, int to, int slot, int steps, List<Double> missing) {
    boolean unplaced = IntStream.range(from + 1, to).anyMatch(i -> placed.crank(i).isEmpty());
    double stretch = (at(to) - at(from)) / turned(slot, steps);
    for (int i = 1; i < steps && !unplaced; i++) {
      missing.add(at(from) + stretch * turned(slot, i));
    }
  }

  private void before(double first, int slot, CrankWindow window, List<Double> missing) {
    double at = first - interval(slot - 1);
    for (int s = slot - 1; at > window.fromDegrees() + END_SHARE * interval(s); s--) {
      missing.add(0, at);
      at -= interval(s - 1);
    }
  }

  private void after(double last, int slot, CrankWindow window, List<Double> missing) {
    double at = last + interval(slot);
    for (int s = slot; at < window.toDegrees() - END_SHARE * interval(s); s++) {
      missing.add(at);
      at += interval(s + 1);
    }
  }

  private static List<AbsentSpark> place(List<Double> missing, AngleTimeline timeline) {
    List<AbsentSpark> out = new ArrayList<>();
    for (double degrees : missing) {
      double time = timeOf(degrees, timeline);
      CrankPoint.at(time, timeline).ifPresent(p -> out.add(new AbsentSpark(time, p)));
    }
    return out;
  }

  /** By halving, with cuts moved out of spans in which the angle is not known. */
  private static double timeOf(double degrees, AngleTimeline timeline) {
    double low = timeline.span().startInclusive();
    double high = timeline.span().endExclusive();
    for (int i = 0; i < HALVINGS; i++) {
      double cut = (low + high) / 2;
      for (int k = 1; k < CUTS && !timeline.covers(cut); k++) {
        cut = low + (high - low) * k / CUTS;
      }
      if (!timeline.covers(cut)) {
        return cut;
      }
      if (timeline.degreesAt(cut) < degrees) {
        low = cut;
      } else {
        high = cut;
      }
    }
    return (low + high) / 2;
  }
}
