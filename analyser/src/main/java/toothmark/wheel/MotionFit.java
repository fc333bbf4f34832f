package toothmark.wheel;

/**
 * Finds the jitter and roughness under which labelled edges are most probable.
 *
 * <p>The likelihood is the product of the filter's innovation densities over the labelled teeth
 * (prediction-error decomposition: Schweppe, IEEE Trans. Inf. Theory 11 (1965) 61-70,
 * doi:10.1109/TIT.1965.1053737), maximised by halving steps in the logarithms.
 */
final class MotionFit {

  private static final double LEAST_JITTER = 3e-3;
  private static final double LEAST_ROUGHNESS = 2e-5;
  private static final double MOST = 0.6;
  private static final double FIRST_STEP = 1.2;
  private static final double LAST_STEP = 0.1;

  private final EdgeSeries edges;
  private final WheelTemplate wheel;
  private final SpeedFilter filter;
  private final Labelling labels;
  private final Lateness lateness = new Lateness();

  MotionFit(EdgeSeries edges, WheelTemplate wheel, SpeedFilter filter, Labelling labels) {
    this.edges = edges;
    this.wheel = wheel;
    this.filter = filter;
    this.labels = labels;
  }

  NoiseModel fit(NoiseModel start) {
    NoiseModel best = start;
    double cost = cost(best);
    double step = FIRST_STEP;
    while (step > LAST_STEP) {
      boolean moved = false;
      for (int k = 0; k < 4; k++) {
        NoiseModel m = moved(best, k, step);
        double c = cost(m);
        if (c < cost) {
          cost = c;
          best = m;
          moved = true;
        }
      }
      step = moved ? step : step / 2;
    }
    return best;
  }

  private static NoiseModel moved(NoiseModel m, int direction, double step) {
    double f = Math.exp(direction % 2 == 0 ? step : -step);
    double j = direction < 2 ? m.jitter() * f : m.jitter();
    double r = direction < 2 ? m.roughness() : m.roughness() * f;
    return m.withMotion(
        Math.min(MOST, Math.max(LEAST_JITTER, j)), Math.min(MOST, Math.max(LEAST_ROUGHNESS, r)));
  }

  /**
   * Negative logarithm of the density of all labelled times, nats; infinite where the noise is so
   * small that the filter's variances are lost to rounding.
   */
  double cost(NoiseModel noise) {
    SpeedState state = new SpeedState();
    int tooth = -1;
    double sum = 0;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] == Labelling.STRAY) {
        continue;
      }
      int e = labels.from + i;
      if (tooth < 0 || labels.steps[i] == 0) {
        state.time = edges.times[e];
        state.paceKnown = false;
      } else {
        sum += step(state, e, wheel.ahead(tooth, labels.steps[i]), noise);
      }
      tooth = labels.teeth[i];
    }
    return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum;
  }

  private double step(SpeedState state, int e, double angle, NoiseModel noise) {
    double interval = edges.intervals[e];
    double u = edges.uncertainties[e] / interval;
    double jitter = noise.jitter() * noise.jitter() + u * u;
    double roughness = noise.roughnessAt(edges.slowest[e]);
    double dt = edges.times[e] - state.time;
    double h = dt / interval;
    if (!state.paceKnown) {
      SpeedFilter.start(state, edges.times[e], dt / angle, h, jitter, roughness);
      return 0;
    }
    filter.lookAhead(h, roughness);
    filter.predict(state);
    double variance = filter.varTime + jitter;
    double late = (dt - angle * filter.meanPace) / interval;
    lateness.of(variance);
    double place = jitter + lateness.spread(late);
    filter.correct(state, edges.times[e], late, place, interval);
    return lateness.nats(late);
  }
}
