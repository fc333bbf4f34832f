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
  void theLagOfACoilBendsOver(double rpm, double degrees) {
    LagBend bend = LagBend.of(wheel(SensorKind.VARIABLE_RELUCTANCE), 37);
    assertThat(bend.degreesAt(rpm)).isCloseTo(degrees, within(1e-4));
    assertThat(LagBend.of(wheel(SensorKind.HALL), 37).degreesAt(rpm)).isZero();
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
