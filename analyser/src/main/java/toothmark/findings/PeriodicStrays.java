package toothmark.findings;

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

  private static final int MOST_STRAYS = 400;
  private static final int MOST_STEPS = 20_000;
  private static final double ODDS_AGAINST = 100;

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
    Interval span = turns.span();
    double highest = HIGHEST_SHARE * turns.teethHertz();
    if (times.length < 8 || highest < 2 * LOWEST_HERTZ) {
      return Optional.empty();
    }
    double step = Math.max(0.25 / span.seconds(), (highest - LOWEST_HERTZ) / MOST_STEPS);
    int steps = (int) ((highest - LOWEST_HERTZ) / step);
    double best = LOWEST_HERTZ;
    double bestR = 0;
    double rev = turns.turned() / span.seconds();
    double spread = turns.spread();
    int stride = (times.length + MOST_STRAYS - 1) / MOST_STRAYS;
    for (int k = 0; k <= steps; k++) {
      double f = LOWEST_HERTZ + k * step;
      if (ToothHum.engineOwn(f, rev, spread, 1 / span.seconds())) {
        continue;
      }
      double r = Math.hypot(mean(times, f, stride, 0), mean(times, f, stride, -Math.PI / 2));
      if (r > bestR) {
        bestR = r;
        best = f;
      }
    }
    return bestR > 0 ? Optional.of(best) : Optional.empty();
  }

  private static Mixture.Source vonMises(
      double[] times, Interval span, double hertz, double price) {
    double r =
        Math.min(0.98, Math.hypot(mean(times, hertz, 1, 0), mean(times, hertz, 1, -Math.PI / 2)));
    double phase = Math.atan2(mean(times, hertz, 1, -Math.PI / 2), mean(times, hertz, 1, 0));
    double kappa = concentration(r);
    double scale = 1.0 / (bessel0(kappa) * span.seconds());
    return new Mixture.Source(
        StraySources.PERIODIC,
        price,
        e -> scale * Math.exp(kappa * Math.cos(2 * Math.PI * hertz * times[e] - phase)));
  }

  private static double mean(double[] times, double hertz, int stride, double shift) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < times.length; i += stride) {
      sum += Math.cos(2 * Math.PI * hertz * times[i] + shift);
      n++;
    }
    return sum / n;
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
