package toothmark.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainNumberTest {

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0.0, 0",
    "1, 1",
    "0.1, 0.1",
    "87.402, 87.402",
    "50000, 50000",
    "0.1234567894, 0.123456789",
    "123456789.4, 123456789",
    "1e12, 1000000000000",
    "-2.5e-9, -0.0000000025",
    "1.5e-20, 1.5E-20",
    "1e300, 1E+300"
  })
  void keepsNineSignificantDigits(double value, String expected) {
    assertThat(PlainNumber.significant(value)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0, 0",
    "0, 3, 0.000",
    "-0.0004, 3, 0.000",
    "-0.25, 3, -0.250",
    "12.5, 0, 13",
    "0.000000001, 9, 0.000000001",
    "-3.999999999, 2, -4.00",
    "1e9, 9, 1000000000.000000000"
  })
  void writesAFixedCountOfDecimals(double value, int decimals, String expected) {
    assertThat(PlainNumber.fixed(value, decimals)).isEqualTo(expected);
  }

  /**
   * The outside witness is {@link BigDecimal}; a digit within a thousandth of the edge may go
   * either way.
   */
  @Test
  void agreesWithExactArithmetic() {
    Random random = new Random(7);
    for (int i = 0; i < 20_000; i++) {
      double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(8));
      int decimals = random.nextInt(10);
      BigDecimal exact = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
      BigDecimal off = new BigDecimal(PlainNumber.fixed(value, decimals)).subtract(exact);
      BigDecimal edge = new BigDecimal(value).subtract(exact).abs().movePointRight(decimals);
      assertThat(off.signum() == 0 || edge.doubleValue() > 0.498).isTrue();
    }
  }

  @Test
  void refusesWhatIsNoNumber() {
    assertThatThrownBy(() -> PlainNumber.significant(Double.NaN))
        .hasMessage("a result must be a finite number, got NaN");
  }
}
