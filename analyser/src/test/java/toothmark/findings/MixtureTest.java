package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class MixtureTest {

  private static final double LN_100 = Math.log(100);

  /** Events on 0 to 1: the first so many even, the rest normal about 0.3 with 0.01. */
  private static double[] events(int even, int near, long seed) {
    Random random = new Random(seed);
    double[] x = new double[even + near];
    for (int i = 0; i < x.length; i++) {
      x[i] = i < even ? random.nextDouble() : 0.3 + 0.01 * random.nextGaussian();
    }
    return x;
  }

  private static List<Mixture.Source> sources(double[] x) {
    return List.of(
        new Mixture.Source("even", 0, e -> 1),
        new Mixture.Source("at 0.3", LN_100, e -> normal(x[e], 0.3)),
        new Mixture.Source("at 0.7", LN_100, e -> normal(x[e], 0.7)));
  }

  private static double normal(double x, double at) {
    double z = (x - at) / 0.01;
    return Math.exp(-z * z / 2) / (0.01 * Math.sqrt(2 * Math.PI));
  }

  @Test
  void sharesAreFoundAndTheIdleSourceIsDropped() {
    double[] x = events(200, 100, 1);
    List<Mixture.Part> parts = Mixture.divide(300, sources(x));
    assertThat(parts).extracting(Mixture.Part::cause).containsExactly("even", "at 0.3");
    assertThat(parts.get(1).share()).isCloseTo(1.0 / 3, Offset.offset(0.04));
    assertThat(parts.get(1).probability()).isGreaterThan(0.999);
  }

  @Test
  void noSourceIsBelievedOnChance() {
    for (long seed = 0; seed < 50; seed++) {
      double[] x = events(60, 0, seed);
      assertThat(Mixture.divide(60, sources(x)))
          .extracting(Mixture.Part::cause)
          .containsExactly("even");
    }
  }

  /**
   * One event at the middle of the narrow source gains ln of the ratio of densities, 39.9: less
   * than the price of ln 100. Two gain twice that, more than it.
   */
  @Test
  void thePriceIsTheOddsThatMustBeWon() {
    double[] one = {0.3, 0.15, 0.85};
    assertThat(Mixture.divide(3, sources(one))).hasSize(1);
    double[] three = {0.3, 0.3, 0.3, 0.15, 0.85};
    assertThat(Mixture.divide(5, sources(three))).hasSize(2);
  }

  @Test
  void noEventsHaveNoCause() {
    assertThat(Mixture.divide(0, sources(new double[0]))).isEmpty();
  }
}
