package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.edges.SensorKind;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

class LagBendTest {

  private static final WheelPattern PATTERN = WheelPattern.of(36, 1);

  private static WheelSetting wheel(SensorKind sensor) {
    ToothGeometry geometry =
        new ToothGeometry(new double[35], uncertain(35, 0.02), new double[35], 0);
    return new WheelSetting(
        OptionalDouble.empty(), OptionalDouble.empty(), PATTERN, geometry, sensor);
  }

  /** A time constant of 37 us on 36 slots: at 6000 rev/min 1.332 less 39.93 / 36 degrees. */
  @ParameterizedTest
  @CsvSource({"200, 0.0000", "1000, 0.0014", "3000, 0.0352", "6000, 0.2229"})
  void theLagOfASineBendsOver(double rpm, double degrees) {
    assertThat(new LagBend(36, 37e-6, 0).degreesAt(rpm)).isCloseTo(degrees, within(1e-4));
  }

  /** A wave with harmonics goes step by step through the filter. */
  @ParameterizedTest
  @CsvSource({"36, 1000, 0.05", "36, 6000, 0.12", "60, 3000, 0.07", "60, 6000, 0.1"})
  void aSteeperWaveBendsAsItsFilterSays(int slots, double rpm, double third) {
    double seconds = 25e-6;
    double late = filteredZero(slots * rpm / 60, seconds, third);
    assertThat(new LagBend(slots, seconds, third).degreesAt(rpm))
        .isCloseTo(6 * rpm * (seconds - late), within(1e-4));
  }

  /** How late a zero of the wave passes a filter of first order, in the fourth period. */
  private static double filteredZero(double frequency, double seconds, double third) {
    double step = 1e-4 / frequency;
    double out = 0;
    for (int i = 1; ; i++) {
      double phase = 2 * Math.PI * 1e-4 * (i - 0.5);
      double before = out;
      double wave = Math.sin(phase) + third * Math.sin(3 * phase);
      out = wave + (out - wave) * Math.exp(-step / seconds);
      if (i > 40_000 && before < 0 && out >= 0) {
        return (i - 1 - 40_000 - before / (out - before)) * step;
      }
    }
  }

  @Test
  void aSwitchingSensorIsLateByAFixedTime() {
    LagBend bend = LagBend.none(wheel(SensorKind.HALL));
    assertThat(bend.of(SensorKind.HALL, 37).degreesAt(6000)).isZero();
    assertThat(bend.of(SensorKind.VARIABLE_RELUCTANCE, 37).degreesAt(6000)).isGreaterThan(0.22);
  }

  @Test
  void aReadingIsMadeOfTheTeethBesideIt() {
    WheelSetting wheel = wheel(SensorKind.HALL);
    assertThat(wheel.teethBeside(87.5)).contains(0.25, org.assertj.core.data.Index.atIndex(8));
    assertThat(wheel.teethBeside(87.5)).contains(0.75, org.assertj.core.data.Index.atIndex(9));
    assertThat(wheel.teethBeside(355)).contains(0.25, org.assertj.core.data.Index.atIndex(34));
    assertThat(wheel.teethBeside(355)).contains(0.75, org.assertj.core.data.Index.atIndex(0));
    double[] between = wheel.teethBeside(85);
    assertThat(wheel.geometry().covariance(between, between))
        .isCloseTo(0.02 * 0.02 / 2, within(1e-12));
    assertThat(wheel.geometry().covariance(between, wheel.teethBeside(95)))
        .as("one tooth of two is the same")
        .isCloseTo(0.02 * 0.02 / 4, within(1e-12));
  }

  private static double[] uncertain(int teeth, double degrees) {
    double[] u = new double[teeth];
    Arrays.fill(u, degrees);
    return u;
  }
}
