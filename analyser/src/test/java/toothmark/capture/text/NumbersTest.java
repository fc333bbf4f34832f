package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.store.BlockPacker;
import toothmark.capture.store.NumberBlock;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;

/**
 * Numbers against {@link Double#parseDouble}, which rounds correctly (Java SE 17, Double.valueOf).
 *
 * <p>The system property {@code toothmark.numbers} sets how many random numbers are tried.
 */
class NumbersTest {

  private static final int TRIES = Integer.getInteger("toothmark.numbers", 200_000);

  private final Numbers numbers = new Numbers(new Dialect(',', '.'));
  private final SampleStore store = new SampleStore(Long.MAX_VALUE);

  /** The double that a column of one cell reads back; NaN when the cell is not plain. */
  private double value(String cell) throws Exception {
    NumberBlock block = new NumberBlock(1);
    byte[] bytes = Arrays.copyOf((cell + ",").getBytes(StandardCharsets.UTF_8), cell.length() + 40);
    numbers.from(bytes);
    int end = numbers.read(0, 0, block, 0);
    if (end == Numbers.NOT_PLAIN) {
      return Double.NaN;
    }
    assertThat(end).as(cell).isEqualTo(cell.length());
    StoredColumn column = store.newColumn();
    column.append(new BlockPacker().pack(block, 1, 0));
    return column.at(0);
  }

  private void check(String cell) throws Exception {
    double expected = Double.parseDouble(cell) + 0.0;
    assertThat(Double.doubleToRawLongBits(value(cell)))
        .as(cell)
        .isEqualTo(Double.doubleToRawLongBits(expected));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0",
        "0.0",
        "1",
        "-1",
        ".5",
        "5.",
        "00012",
        "1e0",
        "1E+2",
        "1e-2",
        "1e22",
        "1e23",
        "1e-22",
        "1e-23",
        "9007199254740991",
        "9007199254740992",
        "9007199254740993",
        "9007199254740993e1",
        "123456789012345",
        "1234567890123456",
        "12345678901234567",
        "123456789012345678",
        "1234567890123456789",
        "12345678901234567890",
        "0.1",
        "0.2",
        "0.3",
        "0.30000000000000004",
        "4.35",
        "179.76931348623157e306",
        "2.2250738585072011e-308",
        "2.2250738585072014e-308",
        "4.9e-324",
        "2.4703282292062327e-324",
        "1.7976931348623157e308",
        "8.5",
        "9.5",
        "123456.7e-10",
        "1.00000000000000011102230246251565404236316680908203125",
        "0.500000000000000166533453693773481063544750213623046875",
        "6.02214076e23",
        "9214843084008499",
        "7.2057594037927933e16",
        "3.1415926535897932384626433832795",
        "0.000000000000000000000000000001",
        "100000000000000000000000000000"
      })
  void hardOnes(String cell) throws Exception {
    check(cell);
  }

  @Test
  void randomOnes() throws Exception {
    Random random = new Random(20_260_301);
    for (int i = 0; i < TRIES; i++) {
      check(random(random));
    }
  }

  private static String random(Random random) {
    StringBuilder b = new StringBuilder(random.nextInt(3) == 0 ? "-" : "");
    int whole = random.nextInt(10);
    int part = random.nextInt(random.nextInt(4) == 0 ? 22 : 9);
    for (int d = 0; d < whole; d++) {
      b.append((char) ('0' + random.nextInt(10)));
    }
    if (part > 0 || whole == 0) {
      b.append('.');
      for (int d = 0; d < Math.max(part, 1); d++) {
        b.append((char) ('0' + random.nextInt(10)));
      }
    }
    if (random.nextInt(3) == 0) {
      int power = random.nextInt(random.nextInt(5) == 0 ? 300 : 25);
      b.append(random.nextBoolean() ? "e-" : "E").append(power);
    }
    return b.toString();
  }

  /** Full-length doubles as Java writes them must come back as they went. */
  @Test
  void everyDoubleThatJavaPrints() throws Exception {
    Random random = new Random(7);
    for (int i = 0; i < TRIES / 4; i++) {
      double d = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(d)) {
        check(Double.toString(d));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        "+",
        ".",
        "e5",
        "1e",
        "1e+",
        "1e1234",
        "1.2.3",
        "1-2",
        "--1",
        "1 2",
        "0x10",
        "1f",
        "1d",
        "NaN",
        "inf",
        "Infinity",
        "1e400",
        "1_000",
        "1'000",
        "12a",
        "1e5e5",
        "1234567890123456789012e",
        "12345678901234567890.5.5",
        "1234567890123456789f"
      })
  void whatIsNoPlainNumber(String cell) throws Exception {
    assertThat(value(cell)).isNaN();
  }

  @Test
  void blanksAroundANumber() throws Exception {
    NumberBlock block = new NumberBlock(1);
    byte[] bytes = Arrays.copyOf(" \t-12.5  ,".getBytes(StandardCharsets.UTF_8), 40);
    numbers.from(bytes);
    assertThat(numbers.read(0, 0, block, 0)).isEqualTo(9);
    assertThat(block.mantissa(0)).isEqualTo(-125);
    assertThat(block.power(0)).isEqualTo((byte) -1);
  }
}
