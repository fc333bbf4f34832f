package toothmark.units;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SayTest {

  /** JCGM 100:2008, 7.2.6: give the uncertainty to two digits and the value to match. */
  @ParameterizedTest
  @CsvSource({
    "-2.634, 0.0204, −2.634 ± 0.040°", "-2.6, 0.05, −2.600 ± 0.098°", "87.4, 0.5, 87.40 ± 0.98°",
    "100.3, 6, 100 ± 12°", "1234, 60, 1234 ± 118°", "5, 0, 5.000 ± 0.000°"
  })
  void letsTheUncertaintyDecideTheDigits(double value, double standard, String expected) {
    assertThat(Say.degrees(new Measured(value, standard)))
        .isEqualTo(expected.replace(" ± ", "\u00a0±\u00a0"));
  }

  @Test
  void saysHowLargeAtMostWhatIsNotSeen() {
    Measured error = new Measured(-0.064, 0.033);
    assertThat(Say.isSeen(error)).isFalse();
    assertThat(Say.bound(error, "°")).isEqualTo("0.129°");
    assertThat(Say.isSeen(new Measured(-0.064, 0.032))).isTrue();
  }

  @Test
  void choosesTheUnitThatSuits() {
    assertThat(Say.seconds(12.5e-6)).isEqualTo("12.5\u202fµs");
    assertThat(Say.seconds(0.0271)).isEqualTo("27.1\u202fms");
    assertThat(Say.seconds(240)).isEqualTo("240\u202fs");
    assertThat(Say.scaled(1e6, "Hz")).isEqualTo("1.00\u202fMHz");
    assertThat(Say.scaled(-0.25, "V")).isEqualTo("−250\u202fmV");
    assertThat(Say.scaled(-0.01024, "")).isEqualTo("−0.0102");
    assertThat(Say.scaled(6.709, "")).isEqualTo("6.71");
    assertThat(Say.scaled(1e-12, "")).isEqualTo("0.000000000");
    assertThat(Say.percent(0.993)).isEqualTo("99\u202f%");
    assertThat(Say.percent(0.041)).isEqualTo("4.1\u202f%");
    assertThat(Say.count(12345678)).isEqualTo("12\u202f345\u202f678");
  }
}
