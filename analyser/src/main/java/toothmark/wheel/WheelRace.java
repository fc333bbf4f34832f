package toothmark.wheel;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Compares wheels by how probable they make the edges of a few calm stretches.
 *
 * <p>All candidates are labelled with the same noise, which is a property of the edges alone.
 */
final class WheelRace {

  /** A candidate so far behind after a stretch is not tried on the next, nats. */
  private static final double HOPELESS = 30;

  private static final double SLOPE_MEMORY = 5;

  /** A stretch of edges with its noise. */
  record Stretch(int from, int to, NoiseModel noise) {}

  private final EdgeSeries edges;
  private final List<Stretch> stretches;
  private final Optional<WheelPattern> stated;
  private final double[] leader;
  private final double[][] pace;

  /** What wheels cost in each stretch, as found when others with dead teeth were tried. */
  private final Map<WheelPattern, double[]> known = new HashMap<>();

  WheelRace(EdgeSeries edges, List<Stretch> stretches, Optional<WheelPattern> stated) {
    this.edges = edges;
    this.stated = stated;
    this.stretches = stretches;
    this.leader = new double[stretches.size()];
    this.pace = new double[stretches.size()][0];
    Arrays.fill(leader, Double.POSITIVE_INFINITY);
  }

  /**
   * Runs one candidate.
   *
   * @param pattern the wheel
   * @return its cost over all stretches, nats; infinite when it fell behind without hope
   */
  double cost(WheelPattern pattern) {
    double sum = 0;
    for (int k = 0; k < stretches.size(); k++) {
      Labelling labels = label(k, pattern);
      if (labels.cost == Double.POSITIVE_INFINITY) {
        return labels.cost;
      }
      sum += Math.min(cost(k, pattern, labels), known(pattern)[k]);
      if (sum > leader[k] + HOPELESS) {
        return Double.POSITIVE_INFINITY;
      }
      if (sum < leader[k]) {
        leader[k] = sum;
        pace[k] = labels.costs;
      }
    }
    return sum;
  }

  /** Cost of a stretch by its labels, with what teeth are out of place or dead, nats. */
  private double cost(int k, WheelPattern pattern, Labelling labels) {
    ToothFaults faults = OutlyingTeeth.find(edges, labels, pattern);
    if (!faults.any()) {
      return labels.cost;
    }
    double cost = cost(k, pattern, faults);
    if (!faults.countsOtherwise()) {
      return Math.min(labels.cost, cost);
    }
    if (PhaseCheck.mayExchange(pattern, faults)) {
      Labelling other = PhaseCheck.withGapAt(edges, labels, pattern, faults.firstDead());
      ToothFaults otherwise = OutlyingTeeth.find(edges, other, pattern);
      return Math.min(cost, cost(k, pattern, otherwise));
    }
    return cost;
  }

  /**
   * Cost with teeth out of place or dead. A wheel without the dead ones is the same row of teeth,
   * and no dearer but for what is usual.
   */
  private double cost(int k, WheelPattern pattern, ToothFaults faults) {
    double cost = withBesideGap(k, pattern, faults);
    if (faults.dead() > 0 && faults.feature().isEmpty()) {
      double price = k == 0 ? faults.dead() * ToothFaults.priceOfDead(pattern) : 0;
      SeenTeeth.wheel(pattern, faults::isDead)
          .ifPresent(w -> known(w)[k] = Math.min(known(w)[k], cost - price));
    }
    return cost;
  }

  private double[] known(WheelPattern pattern) {
    return known.computeIfAbsent(
        pattern,
        p -> DoubleStream.generate(() -> Double.POSITIVE_INFINITY).limit(leader.length).toArray());
  }

  /** With those teeth beside a gap as they were measured that make the edges likelier. */
  private double withBesideGap(int k, WheelPattern pattern, ToothFaults faults) {
    double all = costAs(k, pattern, faults);
    int[] small = faults.smallerThan(OutlyingTeeth.BESIDE_GAP * pattern.pitchDegrees());
    if (small.length == 0 || all > leader[k] + HOPELESS) {
      return all;
    }
    ToothFaults far = faults.inPlace(small);
    double none = costAs(k, pattern, far);
    int[] idle =
        Arrays.stream(small)
            .filter(t -> costAs(k, pattern, faults.inPlace(without(small, t))) >= none)
            .toArray();
    double some = costAs(k, pattern, faults.inPlace(idle));
    return Math.min(Math.min(all, none), some);
  }

  private static int[] without(int[] teeth, int one) {
    return Arrays.stream(teeth).filter(t -> t != one).toArray();
  }

  private double costAs(int k, WheelPattern pattern, ToothFaults faults) {
    double price = isWiderGap(pattern, faults) ? Double.POSITIVE_INFINITY : faults.price(pattern);
    double once = k == 0 || price == Double.POSITIVE_INFINITY ? price : 0;
    return label(stretches.get(k), WheelTemplate.of(pattern, faults)).cost + once;
  }

  /** A dead tooth beside the gap makes a wheel with a wider one, which is a candidate itself. */
  private boolean isWiderGap(WheelPattern pattern, ToothFaults faults) {
    boolean beside =
        faults.dead() > 0
            && pattern.gapLengths().length == 1
            && (faults.isDead(0) || faults.isDead(pattern.teeth() - 1));
    return beside && stated.filter(pattern::isNamedLike).isEmpty();
  }

  private Labelling label(int k, WheelPattern pattern) {
    Stretch s = stretches.get(k);
    WheelTemplate wheel = WheelTemplate.of(pattern);
    return PhaseCheck.label(
        edges, pattern, () -> labeller(s, wheel).against(pace[k]), s.from(), s.to());
  }

  private Labelling label(Stretch s, WheelTemplate wheel) {
    return labeller(s, wheel).label(s.from(), s.to());
  }

  private Labeller labeller(Stretch s, WheelTemplate wheel) {
    SpeedFilter filter = new SpeedFilter(SLOPE_MEMORY);
    return new Labeller(edges, wheel, s.noise(), filter, Labeller.Effort.BRISK);
  }

  /** Labels of all stretches. */
  List<Labelling> labels(WheelPattern pattern) {
    return IntStream.range(0, stretches.size()).mapToObj(k -> label(k, pattern)).toList();
  }
}
