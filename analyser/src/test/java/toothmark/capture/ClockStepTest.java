package toothmark.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ClockStepTest {

  private static double[] times(double step, int count) {
    Random random = new Random(3);
    double[] t = new double[count];
    for (int i = 1; i < count; i++) {
      t[i] = t[i - 1] + (50 + random.nextInt(400)) * step;
    }
    return t;
  }

  @Test
  void findsTheStepOfTheRecorderUnderFinerDigits() {
    assertThat(ClockStep.of(times(2e-6, 40), 0)).isCloseTo(2e-6, within(1e-15));
    assertThat(ClockStep.of(times(2e-6, 40), 1e-7)).isCloseTo(2e-6, within(1e-15));
  }

  @Test
  void theRhythmOfTheSignalIsNoClock() {
    double[] regular = new double[100];
    for (int i = 0; i < regular.length; i++) {
      regular[i] = i * 5e-3;
    }
    assertThat(ClockStep.of(regular, 1e-6)).isEqualTo(1e-6);
  }

  @Test
  void timesFinerThanTheirStatedUnitShowNoStep() {
    double[] t = times(2e-6, 40);
    t[20] += 0.4e-6;
    assertThat(ClockStep.of(t, 1e-6)).isEqualTo(1e-6);
  }

  @Test
  void aFewChangesMayShareAStepByChance() {
    assertThat(ClockStep.of(times(2e-6, 6), 1e-7)).isEqualTo(1e-7);
  }
}
