package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import toothmark.ignition.ChargingLevel;
import toothmark.ignition.Coil;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.PickUp;
import toothmark.ignition.Spark;
import toothmark.wheel.WheelPattern;

class CoilTeethTest {

  private static final WheelPattern WHEEL = WheelPattern.parse("60-2");
  private static final List<SpeedBand> BANDS = List.of(band(750, 1000), band(1000, 1250));

  /** By hand: 104 after tooth 1 is 2 after tooth 18; 3 ms at 1000 rev/min are 18 degrees. */
  @Test
  void teethBeforeChargeAndSpark() {
    List<CoilTeeth> teeth =
        CoilTeeth.of(WHEEL, coil(spark(104.5, 1000, 3e-3), spark(720 + 103.5, 1000, 3e-3)), BANDS);

    assertThat(teeth).hasSize(1);
    assertThat(teeth.get(0).sparks()).isEqualTo(2);
    assertThat(teeth.get(0).spark().tooth()).isEqualTo(18);
    assertThat(teeth.get(0).spark().degreesAfter()).isCloseTo(2, within(1e-6));
    assertThat(teeth.get(0).charge().orElseThrow().tooth()).isEqualTo(15);
    assertThat(teeth.get(0).charge().orElseThrow().degreesAfter()).isCloseTo(2, within(1e-6));
    assertThat(teeth.get(0).duty().orElseThrow())
        .as("3 ms are 18 of 360 degrees")
        .isCloseTo(0.05, within(1e-9));
  }

  @Test
  void sparksOnBothSidesOfTooth1AreOnePlace() {
    List<CoilTeeth> teeth =
        CoilTeeth.of(WHEEL, coil(spark(359, 900, 1e-3), spark(363, 900, 1e-3)), BANDS);

    assertThat(teeth.get(0).spark().tooth()).isEqualTo(1);
    assertThat(teeth.get(0).spark().degreesAfter()).isCloseTo(1, within(1e-6));
  }

  @Test
  void aCoilForAllCylindersHasNoOnePlace() {
    assertThat(CoilTeeth.of(WHEEL, coil(spark(100, 900, 1e-3), spark(280, 900, 1e-3)), BANDS))
        .isEmpty();
  }

  private static CoilTrack coil(Spark... sparks) {
    return new CoilTrack(
        new Coil("coil 1", List.of(1, 4), PickUp.LOGIC),
        ChargingLevel.HIGH,
        360,
        List.of(sparks),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Spark spark(double degrees, double rpm, double dwell) {
    return new Spark(
        1,
        0,
        OptionalDouble.of(1 - dwell),
        Optional.of(new CrankPoint(degrees, rpm, 0)),
        Spark.Turn.FIRST);
  }

  private static SpeedBand band(double from, double to) {
    return new SpeedBand(
        from,
        to,
        from,
        1,
        0,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }
}
