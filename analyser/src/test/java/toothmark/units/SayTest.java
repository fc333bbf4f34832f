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
    assertThat(Say.degrees(new Measured(value, standard))).isEqualTo(expected);
  }

  @Test
  void choosesTheUnitThatSuits() {
    assertThat(Say.seconds(12.5e-6)).isEqualTo("12.5\u2009µs");
    assertThat(Say.seconds(0.0271)).isEqualTo("27.1\u2009ms");
    assertThat(Say.seconds(240)).isEqualTo("240\u2009s");
    assertThat(Say.scaled(1e6, "Hz")).isEqualTo("1.00\u2009MHz");
    assertThat(Say.scaled(-0.25, "V")).isEqualTo("−250\u2009mV");
    assertThat(Say.percent(0.993)).isEqualTo("99\u2009%");
    assertThat(Say.percent(0.041)).isEqualTo("4.1\u2009%");
    assertThat(Say.count(12345678)).isEqualTo("12\u2009345\u2009678");
  }
}
