package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which of several sources each event of a kind came from.
 *
 * <p>Each source says how densely it would strew events at the place of each event. All densities
 * are over the same measure, so they can be compared. The shares of the sources are those of
 * greatest likelihood (Dempster, Laird and Rubin, J. R. Stat. Soc. B 39 (1977) 1-38). A source
 * stays only if the likelihood falls by more than its price when it is left out: what one source
 * explains is not also given to another.
 */
final class Mixture {

  private static final int ROUNDS = 60;
  private static final double LEAST_DENSITY = 1e-300;

  /** As many events as a fit needs: shares are then known to better than 5 %. */
  private static final int ENOUGH = 500;

  private Mixture() {}

  /**
   * A source.
   *
   * @param cause what its events are put down to
   * @param price nats that it must win before it is believed: its prior improbability and the
   *     freedom of what was learned for it
   * @param density how densely it strews events at each event
   */
  record Source(String cause, double price, Density density) {}

  /** How densely a source strews events. */
  interface Density {
    double at(int event);
  }

  /**
   * A source that was believed.
   *
   * @param cause what its events are put down to
   * @param gain nats by which the likelihood would fall without it, its price paid
   * @param events numbers of the events that came from it more probably than from any other
   * @param share of all events, by the fit
   */
  record Part(String cause, double gain, List<Integer> events, double share) {
    Part {
      events = List.copyOf(events);
    }

    /** Posterior probability that the source is at work, the price being the prior odds. */
    double probability() {
      return 1.0 / (1.0 + Math.exp(-Math.min(gain, 50)));
    }
  }

  /**
   * Divides events among sources.
   *
   * @param events how many there are
   * @param sources the candidates; the first is the background, which always stays
   * @return the sources believed that have an event, in the order given
   */
  static List<Part> divide(int events, List<Source> sources) {
    if (events == 0) {
      return List.of();
    }
    int stride = (events + ENOUGH - 1) / ENOUGH;
    List<Source> kept = new ArrayList<>(sources);
    while (true) {
      double[][] d = densities(events, stride, kept);
      double whole = logLikelihood(d, shares(d));
      double[] gains = gains(d, kept, whole);
      int worst = leastBelieved(gains);
      if (worst < 0) {
        return parts(events, shares(d), kept, gains);
      }
      kept.remove(worst);
    }
  }

  private static double[] gains(double[][] d, List<Source> kept, double whole) {
    double[] gains = new double[kept.size()];
    for (int s = 0; s < gains.length; s++) {
      double[][] without = without(d, s);
      double rest = without.length == 0 ? whole : logLikelihood(without, shares(without));
      gains[s] = whole - rest - kept.get(s).price();
    }
    return gains;
  }

  private static int leastBelieved(double[] gains) {
    int worst = -1;
    for (int s = 1; s < gains.length; s++) {
      if (gains[s] <= 0 && (worst < 0 || gains[s] < gains[worst])) {
        worst = s;
      }
    }
    return worst;
  }

  private static double[][] densities(int events, int stride, List<Source> sources) {
    double[][] d = new double[sources.size()][(events + stride - 1) / stride];
    for (int s = 0; s < d.length; s++) {
      for (int e = 0; e < d[s].length; e++) {
        d[s][e] = Math.max(LEAST_DENSITY, sources.get(s).density().at(e * stride));
      }
    }
    return d;
  }

  private static double[][] without(double[][] d, int source) {
    double[][] rest = new double[d.length - 1][];
    for (int s = 0, r = 0; s < d.length; s++) {
      if (s != source) {
        rest[r++] = d[s];
      }
    }
    return rest;
  }

  private static double[] shares(double[][] d) {
    double[] w = new double[d.length];
    Arrays.fill(w, 1.0 / d.length);
    for (int round = 0; round < ROUNDS; round++) {
      double[] next = new double[d.length];
      for (int e = 0; e < d[0].length; e++) {
        double sum = mix(d, w, e);
        for (int s = 0; s < w.length; s++) {
          next[s] += w[s] * d[s][e] / sum;
        }
      }
      for (int s = 0; s < w.length; s++) {
        w[s] = next[s] / d[0].length;
      }
    }
    return w;
  }

  private static double mix(double[][] d, double[] w, int e) {
    double sum = LEAST_DENSITY;
    for (int s = 0; s < w.length; s++) {
      sum += w[s] * d[s][e];
    }
    return sum;
  }

  private static double logLikelihood(double[][] d, double[] w) {
    double sum = 0;
    for (int e = 0; e < d[0].length; e++) {
      sum += Math.log(mix(d, w, e));
    }
    return sum;
  }

  private static List<Part> parts(int events, double[] shares, List<Source> kept, double[] gains) {
    List<List<Integer>> own = new ArrayList<>();
    kept.forEach(s -> own.add(new ArrayList<>()));
    for (int e = 0; e < events; e++) {
      int best = 0;
      double most = -1;
      for (int s = 0; s < shares.length; s++) {
        double claim = shares[s] * Math.max(LEAST_DENSITY, kept.get(s).density().at(e));
        if (claim > most) {
          most = claim;
          best = s;
        }
      }
      own.get(best).add(e);
    }
    List<Part> parts = new ArrayList<>();
    for (int s = 0; s < shares.length; s++) {
      if (!own.get(s).isEmpty()) {
        parts.add(new Part(kept.get(s).cause(), gains[s], own.get(s), shares[s]));
      }
    }
    return parts;
  }
}
