package toothmark.wheel;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Finds noise and labels of a stretch together: label by a guess, fit the noise to the labels,
 * label again. Several first guesses are tried, since with many strays or a rough speed the edges
 * alone say little of the noise; the most probable outcome stands.
 */
final class NoiseStudy {

  /** First guesses of jitter and roughness beside the estimate from the edges. */
  private static final double[][] GUESSES = {{0.004, 0.008}, {0.02, 0.04}};

  private static final double[][] ROUGH_GUESSES = {
    {0.004, 0.008}, {0.02, 0.04}, {0.01, 0.35}, {0.08, 0.08}
  };

  /** From this roughness on more guesses are tried. */
  private static final double ROUGH = 0.05;

  private static final int ROUNDS = 2;
  private static final double PRIOR_TEETH = 40;
  private static final double PRIOR_EVENTS = 0.6;
  private static final double LEAST_NATS = 1.0;

  private final EdgeSeries edges;
  private final WheelTemplate wheel;
  private final SpeedFilter filter;
  private final int from;
  private final int to;
  private NoiseModel noise;
  private Labelling labels;

  NoiseStudy(EdgeSeries edges, WheelTemplate wheel, SpeedFilter filter, int from, int to) {
    this.edges = edges;
    this.wheel = wheel;
    this.filter = filter;
    this.from = from;
    this.to = to;
  }

  /**
   * Studies the stretch.
   *
   * @param first noise as estimated from the edges
   * @return this, with what was found
   */
  NoiseStudy run(NoiseModel first) {
    labels = null;
    attempt(first);
    if (labels.isPlain()) {
      // no other noise would change the labels
      MotionFit fit = new MotionFit(edges, wheel, filter, labels);
      for (double[] g : GUESSES) {
        NoiseModel other = fit.fit(first.withMotion(g[0], g[1]));
        noise = fit.cost(other) < fit.cost(noise) ? other : noise;
      }
      return this;
    }
    boolean rough = Math.max(noise.roughness(), noise.jitter()) > ROUGH;
    for (double[] g : rough ? ROUGH_GUESSES : GUESSES) {
      attempt(first.withMotion(g[0], g[1]));
    }
    return this;
  }

  /**
   * Whether the edges are enough more probable with certain teeth faulty.
   *
   * @param pattern the wheel
   * @param faults of its teeth
   * @return whether the faults are worth their price
   */
  boolean supports(WheelPattern pattern, ToothFaults faults) {
    return cost(pattern, faults) < labels.cost;
  }

  /** Cost of the stretch with certain teeth faulty, and of saying so, nats. */
  double cost(WheelPattern pattern, ToothFaults faults) {
    WheelTemplate as = WheelTemplate.of(pattern, faults);
    Labelling l = new Labeller(edges, as, noise, filter, Labeller.Effort.BRISK).label(from, to);
    return l.cost + faults.price(pattern);
  }

  NoiseModel noise() {
    return noise;
  }

  Labelling labels() {
    return labels;
  }

  /**
   * Tries the noise of labels that were found in another way.
   *
   * @param first noise as estimated from the edges
   * @param known labels of the whole stretch
   * @return this, with what is the more probable
   */
  NoiseStudy tried(NoiseModel first, Labelling known) {
    MotionFit fit = new MotionFit(edges, wheel, filter, known);
    attempt(
        Arrays.stream(ROUGH_GUESSES)
            .map(g -> fit.fit(first.withMotion(g[0], g[1])))
            .min(Comparator.comparingDouble(fit::cost))
            .orElseThrow());
    return this;
  }

  private void attempt(NoiseModel guess) {
    NoiseModel m = guess;
    for (int r = 0; r < ROUNDS; r++) {
      Labelling l = new Labeller(edges, wheel, m, filter, Labeller.Effort.BRISK).label(from, to);
      if (labels == null || !(l.cost >= labels.cost)) {
        labels = l;
        noise = m;
      }
      m = new MotionFit(edges, wheel, filter, l).fit(m);
    }
  }

  /**
   * Rates of strays and losses by a labelling.
   *
   * @param noise whose rates are replaced
   * @param labels of a stretch
   * @return the noise with the rates found, drawn a little towards few
   */
  static NoiseModel withRates(NoiseModel noise, Labelling labels) {
    int teeth = 0;
    int losses = 0;
    for (int i = 0; i < labels.size(); i++) {
      teeth += labels.teeth[i] == Labelling.STRAY ? 0 : 1;
      losses += labels.steps[i] > 1 ? 1 : 0;
    }
    int strays = labels.size() - teeth;
    return noise.withRates(nats(strays, teeth), nats(losses, teeth));
  }

  private static double nats(int events, int teeth) {
    double rate = (events + PRIOR_EVENTS) / (teeth + PRIOR_TEETH);
    return Math.max(LEAST_NATS, -Math.log(Math.min(1, rate)));
  }
}
