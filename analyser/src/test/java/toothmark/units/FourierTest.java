package toothmark.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FourierTest {

  private static final int MANY = 1 << 17;

  /** The transform of one cosine of k cycles is n/2 at frequency k and nothing elsewhere. */
  @Test
  void findsACosineAndLeavesACallToStopStanding() {
    double[] x = new double[MANY];
    for (int i = 0; i < MANY; i++) {
      x[i] = Math.cos(2 * Math.PI * 300 * i / MANY);
    }
    Thread.currentThread().interrupt();
    Fourier.forward(x);
    assertThat(Thread.interrupted()).isTrue();
    assertThat(x[2 * 300]).isCloseTo(MANY / 2.0, within(1e-6));
    x[2 * 300] = 0;
    assertThat(Arrays.stream(x).map(Math::abs).max()).hasValueCloseTo(0.0, within(1e-6));
  }
}
