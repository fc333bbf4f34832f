package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The fit on errors of known kind. */
class CorrelatedFitTest {

  private static double[] errors(Random random, int n, double white, double wander, double rho) {
    double[] e = new double[n];
    double state = wander * random.nextGaussian();
    for (int i = 0; i < n; i++) {
      e[i] = state + white * random.nextGaussian();
      state = rho * state + wander * Math.sqrt(1 - rho * rho) * random.nextGaussian();
    }
    return e;
  }

  private static double[] speeds(int n) {
    double[] rpm = new double[n];
    for (int i = 0; i < n; i++) {
      rpm[i] = 950 + 4850.0 * (1 - Math.abs(2.0 * i / n - 1));
    }
    return rpm;
  }

  private static double covered(double white, double wander, double rho, int runs) {
    Random random = new Random(20240501);
    int n = 240;
    double[] rpm = speeds(n);
    int inside = 0;
    for (int k = 0; k < runs; k++) {
      double[] gap = errors(random, n, white, wander, rho);
      for (int i = 0; i < n; i++) {
        gap[i] += 1.5 - 6e-6 * 40 * rpm[i];
      }
      Line line = LineFit.of(rpm, gap, new double[n]).line();
      double z = (line.delayMicroseconds() - 40) / Math.sqrt(line.delayVariance());
      inside += Math.abs(z) < 1.96 ? 1 : 0;
    }
    return (double) inside / runs;
  }

  /** Of 200 runs 95 % is 190 with a standard deviation of 3.1; the bounds are 3 of them away. */
  @Test
  void ninetyFivePercentIntervalsHoldWithIndependentErrors() {
    assertThat(covered(0.1, 0, 0, 200)).isBetween(0.9, 0.995);
  }

  @Test
  void ninetyFivePercentIntervalsHoldWithErrorsThatFollowEachOther() {
    assertThat(covered(0.05, 0.1, 0.9, 200)).isBetween(0.9, 0.995);
  }

  @Test
  void findsTheKindOfError() {
    double[] rpm = speeds(2000);
    double[] gap = errors(new Random(5), 2000, 0.05, 0.1, 0.9);

    LineFit fit = LineFit.of(rpm, gap, new double[2000]);

    assertThat(fit.errors().correlation()).isCloseTo(0.9, within(0.051));
    assertThat(Math.sqrt(fit.errors().wandering())).isCloseTo(0.1, within(0.02));
    assertThat(Math.sqrt(fit.errors().white())).isCloseTo(0.05, within(0.01));
  }

  /** A wave beside the line, in one set of readings there and in the other not. */
  @Test
  void whatIsDoubtedIsTakenWhereItShowsAndLeftWhereItDoesNot() {
    Random random = new Random(3);
    double[] there = errors(random, 240, 0.1, 0, 0);
    double[] absent = errors(random, 240, 0.1, 0, 0);
    double[][] rows = new double[240][];
    double[] growth = new double[240];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new double[] {1, Math.sin(0.3 * i) / (1 + 0.02 * i)};
      there[i] += 0.6 * rows[i][1];
      growth[i] = 1;
    }
    CorrelatedFit.Sizes sizes = new CorrelatedFit.Sizes(new double[240], growth);
    CorrelatedFit.Known known = new CorrelatedFit.Known(1, 0, 1);

    CorrelatedFit shows = CorrelatedFit.of(rows, there, sizes, known);
    CorrelatedFit doesNot = CorrelatedFit.of(rows, absent, sizes, known);

    double u = Math.sqrt(shows.covariance(1, 1));
    assertThat(shows.coefficient(1)).isCloseTo(0.6, within(3 * u));
    assertThat(u).isLessThan(0.05);
    assertThat(Math.abs(doesNot.coefficient(1))).isLessThan(0.02);
    assertThat(doesNot.covariance(0, 0)).isLessThan(1.2 * 0.01 / 240);
  }

  /** Errors that are a time grow as an angle; the same line is then known better. */
  @Test
  void seesThatErrorsGrow() {
    Random random = new Random(4);
    double[] rpm = speeds(600);
    double[] gap = new double[600];
    for (int i = 0; i < gap.length; i++) {
      gap[i] = 3e-5 * rpm[i] * random.nextGaussian();
    }

    LineFit fit = LineFit.of(rpm, gap, new double[600]);

    assertThat(fit.errors().growingShare()).isEqualTo(1);
    assertThat(Math.sqrt(fit.variances()[0])).isCloseTo(3e-5 * rpm[0], within(2e-6 * rpm[0]));
  }
}
