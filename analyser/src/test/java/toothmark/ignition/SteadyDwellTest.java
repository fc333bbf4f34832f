package toothmark.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SteadyDwellTest {

  private static final double INTERVAL = 10e-6;

  /**
   * Root mean square error of sparks that are charged for one time, over that of the midpoint rule.
   */
  private static double gain(double dwell, double scatter) {
    Random random = new Random(3);
    int n = 400;
    double[] truth = new double[n];
    Firings plain = new Firings(ChargingLevel.HIGH);
    for (int i = 0; i < n; i++) {
      truth[i] = 0.01 * (i + 1) + 0.003 * random.nextDouble();
      double start = truth[i] - dwell - scatter * random.nextGaussian();
      plain.add(midpoint(start), midpoint(truth[i]), INTERVAL / Math.sqrt(12));
    }
    return error(SteadyDwell.sharpen(plain, INTERVAL), truth) / error(plain, truth);
  }

  private static double midpoint(double time) {
    return (Math.floor(time / INTERVAL) + 0.5) * INTERVAL;
  }

  private static double error(Firings firings, double[] truth) {
    double squares = 0;
    for (int i = 0; i < truth.length; i++) {
      squares += Math.pow(firings.spark(i) - truth[i], 2);
    }
    return Math.sqrt(squares / truth.length);
  }

  /**
   * The spans share (1 - f) of a sample in (1 - f) of all cases and f in the others, so the
   * variance falls to f³ + (1 - f)³ of the midpoint rule's (derived).
   */
  @Test
  void halvesTheErrorWhereTheDwellEndsHalfWayBetweenSamples() {
    assertThat(gain(300.5 * INTERVAL, 0)).isCloseTo(0.5, within(0.04));
    assertThat(gain(300.2 * INTERVAL, 0))
        .isCloseTo(Math.sqrt(Math.pow(0.2, 3) + Math.pow(0.8, 3)), within(0.04));
  }

  @Test
  void changesNothingWhereTheDwellIsAWholeNumberOfSamples() {
    assertThat(gain(300 * INTERVAL, 0)).isCloseTo(1, within(0.02));
  }

  @Test
  void leavesADwellThatWandersAlone() {
    assertThat(gain(300.5 * INTERVAL, 3 * INTERVAL)).isEqualTo(1);
  }
}
