package toothmark.wheel;

import java.util.List;

/**
 * Compares wheels by how probable they make the edges of a few calm stretches.
 *
 * <p>All candidates are labelled with the same noise, which is a property of the edges alone.
 */
final class WheelRace {

  /** A candidate so far behind after a stretch is not tried on the next, nats. */
  private static final double HOPELESS = 30;

  /** What it costs to say of a tooth that it is out of place. */
  private static final double BENT_NATS = 6;

  private static final double SLOPE_MEMORY = 5;

  /** A stretch of edges with its noise. */
  record Stretch(int from, int to, NoiseModel noise) {

    /** Cost of the edges when none is a stray or out of place: the density at their best. */
    double freeCost(EdgeSeries edges) {
      double sum = 0;
      for (int i = from + 2; i < to; i++) {
        double r = noise.roughnessAt(edges.intervals[i]);
        double v = 2 * noise.jitter() * noise.jitter() + r * r / 3;
        sum += 0.5 * Math.log(2 * Math.PI * v) + 0.5;
      }
      return sum;
    }
  }

  private final EdgeSeries edges;
  private final List<Stretch> stretches;
  private final double[] leader;

  WheelRace(EdgeSeries edges, List<Stretch> stretches) {
    this.edges = edges;
    this.stretches = stretches;
    this.leader = new double[stretches.size()];
    java.util.Arrays.fill(leader, Double.POSITIVE_INFINITY);
  }

  /**
   * Runs one candidate.
   *
   * @param pattern the wheel
   * @return its cost over all stretches, nats; infinite when it fell behind without hope
   */
  double cost(WheelPattern pattern) {
    double[] flat = new double[pattern.teeth()];
    double sum = 0;
    for (int k = 0; k < stretches.size(); k++) {
      Stretch s = stretches.get(k);
      Labelling labels = label(s, WheelTemplate.of(pattern, flat));
      double cost = labels.cost;
      double[] offsets = OutlyingTeeth.offsets(edges, labels, pattern);
      long bent = java.util.Arrays.stream(offsets).filter(x -> x != 0).count();
      if (bent > 0) {
        Labelling again = label(s, WheelTemplate.of(pattern, offsets));
        double price = (k == 0 ? BENT_NATS : 0) * bent;
        if (again.cost + price < cost) {
          labels = again;
          cost = again.cost + price;
        }
      }
      sum += cost + neverSeen(labels, pattern.teeth());
      if (sum > leader[k] + HOPELESS) {
        return Double.POSITIVE_INFINITY;
      }
      leader[k] = Math.min(leader[k], sum);
    }
    return sum;
  }

  private Labelling label(Stretch s, WheelTemplate wheel) {
    SpeedFilter filter = new SpeedFilter(SLOPE_MEMORY);
    return new Labeller(edges, wheel, s.noise(), filter, Labeller.Effort.BRISK)
        .label(s.from(), s.to());
  }

  /** Labels of all stretches. */
  List<Labelling> labels(WheelPattern pattern) {
    WheelTemplate wheel = WheelTemplate.of(pattern);
    return stretches.stream().map(s -> label(s, wheel)).toList();
  }

  /** A tooth that is seen in under a quarter of its turns is no tooth of the wheel. */
  private static double neverSeen(Labelling labels, int teeth) {
    int[] seen = new int[teeth];
    int first = -1;
    int count = 0;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] != Labelling.STRAY) {
        first = first < 0 ? labels.teeth[i] : first;
        count += labels.steps[i];
        seen[labels.teeth[i]]++;
      }
    }
    double turns = count / (double) teeth;
    double cost = 0;
    for (int s : seen) {
      cost += turns >= 3 && s < 0.25 * Math.floor(turns) ? HOPELESS : 0;
    }
    return cost;
  }
}
