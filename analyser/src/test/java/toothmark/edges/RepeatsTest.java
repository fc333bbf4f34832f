package toothmark.edges;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Turns found by the rhythm of passings alone. */
class RepeatsTest {

  private static final int TURNS = 30;

  /** Teeth and slots of a wheel with some slots missing, half a pitch apart, with scatter. */
  private static List<Double> passings(int slots, int missing, double scatter) {
    Random random = new Random(slots);
    List<Double> out = new ArrayList<>();
    for (int k = 0; k < TURNS * slots; k++) {
      if (k % slots < slots - missing) {
        double after = k % slots == slots - missing - 1 ? (missing + 1) / 2.0 : 0.5;
        out.add(100 * (k + scatter * random.nextGaussian()));
        out.add(100 * (k + after + scatter * random.nextGaussian()));
      }
    }
    return out;
  }

  private static Repeats of(List<Double> passings) {
    return new Repeats(passings.stream().mapToDouble(Double::doubleValue).toArray());
  }

  @ParameterizedTest
  @CsvSource({"36, 1", "60, 2", "12, 1", "4, 1", "120, 2"})
  void findsATurn(int slots, int missing) {
    Repeats repeats = of(passings(slots, missing, 0.01));
    assertThat(repeats.lag).isEqualTo(2 * (slots - missing));
    assertThat(repeats.comesAgain(repeats.lag)).isTrue();
  }

  @Test
  void findsNoTurnOnAnEvenWheel() {
    assertThat(of(passings(36, 0, 0.01)).lag).isZero();
  }

  @Test
  void findsNoTurnInNoise() {
    Random random = new Random(5);
    List<Double> out = new ArrayList<>();
    double at = 0;
    for (int i = 0; i < 600; i++) {
      at += 20 + 180 * random.nextDouble();
      out.add(at);
    }
    assertThat(of(out).lag).isZero();
  }

  /** A stray puts one turn out of step: what it reaches stands alone, the rest goes on. */
  @Test
  void comparesNothingAcrossAStray() {
    List<Double> passings = passings(36, 1, 0.005);
    int at = 2 * 35 * 3 + 30;
    passings.add(at, passings.get(at - 1) + 20);
    passings.add(at + 1, passings.get(at - 1) + 30);
    Repeats repeats = of(passings);
    assertThat(repeats.lag).isEqualTo(70);
    assertThat(repeats.comesAgain(at - 10)).isFalse();
    assertThat(repeats.comesAgain(at - 70 + 4)).isFalse();
    assertThat(repeats.comesAgain(20)).isTrue();
    assertThat(repeats.comesAgain(at + 70)).isTrue();
  }
}
