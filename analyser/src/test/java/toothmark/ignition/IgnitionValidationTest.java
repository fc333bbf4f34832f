package toothmark.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.capture.SampledSignal;

/** Ignition against handbooks; each check names its source. */
class IgnitionValidationTest {

  private static final double INTERVAL = 5e-6;

  /**
   * Cylinders that share a coil reach top dead centre together: the firing order folded in half.
   * 1-6-5-4-3-2 gives 1 with 4, 6 with 3, 5 with 2 (Halderman and Linder, Automotive Engine
   * Performance, p. 361); the others are folded by the same rule.
   */
  @ParameterizedTest
  @CsvSource({
    "1 6 5 4 3 2, 1 4 6 3 5 2",
    "1 3 4 2, 1 4 3 2",
    "1 5 3 6 2 4, 1 6 5 2 3 4",
    "1 8 4 3 6 5 7 2, 1 6 8 5 4 7 3 2"
  })
  void cylindersThatShareACoilReachTopDeadCentreTogether(String firing, String pairs) {
    FiringOrder order = FiringOrder.even(cylinders(firing));
    List<Integer> paired = cylinders(pairs);
    for (int i = 0; i < paired.size(); i += 2) {
      double first = order.degreesAfterCylinder1(paired.get(i));
      for (int other : paired) {
        double apart = Math.abs(order.degreesAfterCylinder1(other) - first) % 360;
        boolean together = other == paired.get(i) || other == paired.get(i + 1);
        assertThat(apart < 1e-9).as("%s with %s", paired.get(i), other).isEqualTo(together);
      }
    }
  }

  private static List<Integer> cylinders(String text) {
    return Arrays.stream(text.split(" ")).map(Integer::valueOf).toList();
  }

  /**
   * A coil of 3.5 mH and 0.6 ohm needs t = -(L/R) ln(1 - I R / V) to 7 A (step response of an RL
   * circuit, any text on circuits); the times are its values to two decimals. So long a clamp must
   * see the coil charge.
   */
  @ParameterizedTest
  @CsvSource({"8, 4.34", "10, 3.18", "12, 2.51", "13.5, 2.17", "15, 1.92"})
  void aClampSeesTheChargeTakeAsLongAsTheCurveDoes(double volts, double milliseconds) {
    SketchedEngine engine = SketchedEngine.steady(1, 1500);
    double[] sparks = engine.passings(80, 360);
    double dwell = milliseconds * 1e-3;
    double[] amperes = new double[(int) (engine.seconds() / INTERVAL)];
    double peak = 0;
    for (double spark : sparks) {
      for (int i = (int) Math.ceil((spark - dwell) / INTERVAL); i * INTERVAL < spark; i++) {
        double t = i * INTERVAL - (spark - dwell);
        amperes[i] = volts / 0.6 * (1 - Math.exp(-0.6 * t / 3.5e-3));
        peak = Math.max(peak, amperes[i]);
      }
    }
    Coil coil = new Coil("coil 1", List.of(1, 4), PickUp.CURRENT_CLAMP);
    CoilChannel channel = new CoilChannel(coil, SampledSignal.of(0, INTERVAL, amperes));

    CoilTrack track =
        CoilReader.read(
                List.of(channel), engine.timeline(10, 0), FiringOrder.even(List.of(1, 3, 4, 2)))
            .get(0);

    assertThat(peak).as("the table's time leads to 7 A").isCloseTo(7, within(0.03));
    assertThat(track.dwell().orElseThrow().meanSeconds()).isCloseTo(dwell, within(0.05e-3));
  }
}
