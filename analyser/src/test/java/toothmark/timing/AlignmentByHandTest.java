package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import toothmark.edges.SensorKind;
import toothmark.units.Measured;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/** Examples worked by hand. */
class AlignmentByHandTest {

  private static final WheelSetting WHEEL =
      new WheelSetting(
          OptionalDouble.of(90),
          OptionalDouble.of(150),
          WheelPattern.plain(36),
          new ToothGeometry(new double[36], new double[36], new double[36], 0),
          SensorKind.VARIABLE_RELUCTANCE);

  private static GapFit gap(Optional<Measured> delay) {
    return new GapFit(
        new Measured(0.5, 0.1),
        delay,
        0.9,
        1900,
        2100,
        100,
        0,
        Optional.empty(),
        0.1,
        GapFit.Verdict.CANNOT_TELL,
        List.of());
  }

  private static Alignment byLight(GapFit gap, StrobeWorksheet.Reading... readings) {
    TdcReadings read =
        new TdcReadings(
            List.of(new PistonStop(22, 18, 0.5)),
            List.of(),
            Optional.of(new TdcReadings.Light(Path.of("light.csv"), List.of(readings))),
            0.5);
    return new AlignmentByHand(WHEEL).byLight(read, gap).alignment();
  }

  /**
   * The light shows 13° where 10° is commanded; the pointer reads 2° too much; the capture's own
   * gap at 2000 rev/min is 0.5 - 1.2 = -0.7°, and 65 microseconds of light and sensor are 0.78°: 3
   * - 2 + 0.7 + 0.78. Variances: eye 0.25, pointer 0.125, gap 0.01 + 0.0036 - 0.0108, light and
   * sensor (12000 times 51 microseconds) 0.3744.
   */
  @Test
  void oneReadingWithALight() {
    Alignment a =
        byLight(
            gap(Optional.of(new Measured(100e-6, 5e-6))),
            new StrobeWorksheet.Reading(2000, 13, 10));

    Measured error = a.errorDegrees().orElseThrow();
    assertThat(error.value()).isCloseTo(2.48, within(1e-9));
    assertThat(error.standardUncertainty()).isCloseTo(Math.sqrt(0.7522), within(1e-6));
    assertThat(a.tooth1BtdcDegrees().orElseThrow().value()).isCloseTo(92.48, within(1e-9));
    assertThat(a.sensorMoveMillimetres().orElseThrow().value())
        .isCloseTo(2.48 * Math.PI * 150 / 360, within(1e-9));
  }

  /** The same, with a controller's delay that one speed does not show: 0.5° is the gap there. */
  @Test
  void oneReadingInTheMiddleOfACaptureOfOneSpeed() {
    Measured error =
        byLight(gap(Optional.empty()), new StrobeWorksheet.Reading(2000, 13, 10))
            .errorDegrees()
            .orElseThrow();

    assertThat(error.value()).isCloseTo(3 - 2 - 0.5 + 0.78, within(1e-9));
    assertThat(error.standardUncertainty())
        .isCloseTo(Math.sqrt(0.25 + 0.125 + 0.01 + 0.3744), within(1e-6));
  }

  /** Two readings 4° apart at one speed: their mean, the more uncertain for it. */
  @Test
  void readingsThatDisagreeAreWorthLess() {
    GapFit gap = gap(Optional.of(new Measured(100e-6, 5e-6)));
    Measured agree =
        byLight(
                gap,
                new StrobeWorksheet.Reading(2000, 13, 10),
                new StrobeWorksheet.Reading(2000, 13, 10))
            .errorDegrees()
            .orElseThrow();
    Measured disagree =
        byLight(
                gap,
                new StrobeWorksheet.Reading(2000, 15, 10),
                new StrobeWorksheet.Reading(2000, 11, 10))
            .errorDegrees()
            .orElseThrow();

    assertThat(disagree.value()).isCloseTo(agree.value(), within(1e-9));
    assertThat(disagree.standardUncertainty())
        .as("squares 8 over variance 0.25, one degree of freedom")
        .isCloseTo(agree.standardUncertainty() * Math.sqrt(32), within(1e-6));
  }
}
