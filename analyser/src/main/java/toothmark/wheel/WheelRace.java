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

  private static final double SLOPE_MEMORY = 5;

  /** A stretch of edges with its noise. */
  record Stretch(int from, int to, NoiseModel noise) {}

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
    double sum = 0;
    for (int k = 0; k < stretches.size(); k++) {
      Stretch s = stretches.get(k);
      Labelling labels = label(s, WheelTemplate.of(pattern));
      ToothFaults faults = OutlyingTeeth.find(edges, labels, pattern);
      double cost = labels.cost;
      if (faults.any()) {
        double price = k == 0 || faults.price() == Double.POSITIVE_INFINITY ? faults.price() : 0;
        double again = label(s, WheelTemplate.of(pattern, faults)).cost + price;
        cost = faults.dead() > 0 ? again : Math.min(cost, again);
      }
      sum += cost;
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
}
