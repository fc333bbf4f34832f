package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import toothmark.units.Measured;

class SlipSearchTest {

  private static final Measured USUAL = new Measured(15, 10);
  private static final int COUNT = 80;

  private final Random random = new Random(11);
  private final double[] times = new double[COUNT];
  private final double[] rpm = new double[COUNT];
  private final double[] readings = new double[COUNT];

  /** Readings while the speed rises; the wheel moves between two of them. */
  private Optional<SlipSearch.Slip> search(int from, int to, double degrees) {
    for (int i = 0; i < COUNT; i++) {
      times[i] = 0.03 * i;
      rpm[i] = 900 + 40 * i;
      double share = Math.max(0, Math.min(1, (i - from) / (double) (to - from)));
      readings[i] = -6e-6 * 20 * rpm[i] + share * degrees + 0.05 * random.nextGaussian();
    }
    return SlipSearch.find(times, rpm, readings, USUAL);
  }

  @Test
  void findsAStep() {
    SlipSearch.Slip slip = search(41, 42, -3).orElseThrow();

    assertThat(slip.described().manner()).isEqualTo(WheelSlip.Manner.STEP);
    assertThat(slip.from()).isEqualTo(times[41]);
    assertThat(slip.to()).isEqualTo(times[42]);
    assertThat(slip.degrees().value()).isCloseTo(-3, within(0.1));
    assertThat(slip.movedAt(0)).isZero();
    assertThat(slip.movedAt(2)).isEqualTo(slip.degrees().value());
  }

  @Test
  void findsACreep() {
    SlipSearch.Slip slip = search(20, 60, 4).orElseThrow();

    assertThat(slip.described().manner()).isEqualTo(WheelSlip.Manner.CREEP);
    assertThat(slip.from()).isCloseTo(times[20], within(0.15));
    assertThat(slip.to()).isCloseTo(times[60], within(0.15));
    assertThat(slip.degrees().value()).isCloseTo(4, within(0.2));
  }

  @Test
  void aSensorThatIsLateIsNoSlip() {
    assertThat(search(20, 60, 0)).isEmpty();
  }

  @Test
  void aFewWildReadingsAreNoSlip() {
    search(20, 60, 0);
    readings[30] += 5;
    readings[31] += 7;
    readings[COUNT - 1] -= 6;

    assertThat(SlipSearch.find(times, rpm, readings, USUAL)).isEmpty();
  }
}
