package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
import toothmark.units.Interval;

/**
 * Looks for a frequency at which strays come.
 *
 * <p>The strength at a frequency is Rayleigh's: with n strays and R the length of the mean of their
 * unit vectors, n R² is about exponential with mean 1 when there is no such frequency (Mardia and
 * Jupp, Directional Statistics, 2000, 6.3.1). The density is a von Mises one of the same R.
 */
final class PeriodicStrays {

  private static final double LOWEST_HERTZ = 15;

  /**
   * Highest frequency searched, as a share of that of the teeth: a stray stands between teeth by
   * its nature, so strays of any kind keep step with them.
   */
  private static final double HIGHEST_SHARE = 0.5;

  private static final int FEWEST = 8;
  private static final double ODDS_AGAINST = 100;

  /** Strays never keep step better than this: it keeps the density finite. */
  private static final double LONGEST_MEAN = 0.98;

  private PeriodicStrays() {}

  /** The strongest frequency as a source, where there are enough strays to look for one. */
  static Optional<Mixture.Source> source(double[] times, Turns turns) {
    return strongest(times, turns).map(f -> vonMises(times, turns.span(), f, price(turns)));
  }

  private static double price(Turns turns) {
    double lines = HIGHEST_SHARE * turns.teethHertz() * turns.span().seconds();
    return Math.log(ODDS_AGAINST) + Math.log(Math.max(1, lines));
  }

  /** The strongest frequency that is none of the engine's own, Hz. */
  static Optional<Double> strongest(double[] times, Turns turns) {
    double highest = HIGHEST_SHARE * turns.teethHertz();
    if (times.length < FEWEST || highest < 2 * LOWEST_HERTZ) {
      return Optional.empty();
    }
    double seconds = turns.span().seconds();
    double rev = turns.turned() / seconds;
    double spread = turns.spread();
    double[] ones = new double[times.length];
    Arrays.fill(ones, 1);
    Periodogram p = Periodogram.of(times, ones, highest);
    int best = -1;
    for (int k = (int) Math.ceil(LOWEST_HERTZ / p.stepHertz()); k < p.lines(); k++) {
      boolean own = ToothHum.engineOwn(p.hertz(k), rev, spread, 1 / seconds);
      if (!own && (best < 0 || p.power(k) > p.power(best))) {
        best = k;
      }
    }
    return best < 0 ? Optional.empty() : Optional.of(p.hertz(best));
  }

  private static Mixture.Source vonMises(
      double[] times, Interval span, double hertz, double price) {
    double c = mean(times, hertz, 0);
    double s = mean(times, hertz, -Math.PI / 2);
    double phase = Math.atan2(s, c);
    double kappa = concentration(Math.min(LONGEST_MEAN, Math.hypot(c, s)));
    double scale = 1.0 / (bessel0(kappa) * span.seconds());
    return new Mixture.Source(
        StraySources.PERIODIC,
        price,
        e -> scale * Math.exp(kappa * Math.cos(2 * Math.PI * hertz * times[e] - phase)));
  }

  private static double mean(double[] times, double hertz, double shift) {
    double sum = 0;
    for (double t : times) {
      sum += Math.cos(2 * Math.PI * hertz * t + shift);
    }
    return sum / times.length;
  }

  /** Concentration of the von Mises density of mean length r. Mardia and Jupp, eq. 5.3.9-11. */
  private static double concentration(double r) {
    if (r < 0.53) {
      return 2 * r + r * r * r + 5 * Math.pow(r, 5) / 6;
    }
    return r < 0.85 ? -0.4 + 1.39 * r + 0.43 / (1 - r) : 1 / (r * r * r - 4 * r * r + 3 * r);
  }

  /** Modified Bessel function of order 0, by its series. */
  private static double bessel0(double x) {
    double term = 1;
    double sum = 1;
    for (int k = 1; k < 60; k++) {
      term *= (x / 2) * (x / 2) / ((double) k * k);
      sum += term;
    }
    return sum;
  }
}
