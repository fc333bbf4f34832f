package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import toothmark.capture.store.NumberBlock;

/** A remembered writing gives what the general parser gives, or nothing. */
class SteadyRowTest {

  private static final int COLUMNS = 3;
  private static final int ROWS = 12;
  private static final int MANY_ROWS = 400;
  private static final int WRITINGS = 3000;
  private static final String ODD_BYTES = "0123456789+-.,;eE \t\r\n/:()*\"x\u007f";

  private final Random random = new Random(77);
  private final Dialect dialect = new Dialect(',', '.');
  private final Numbers numbers = new Numbers(dialect);
  private final NumberBlock[] blocks = new NumberBlock[COLUMNS];
  private final NumberBlock expected = new NumberBlock(1);
  private SteadyRow steady;
  private int accepted;
  private int refused;

  private record Writing(int whole, int decimals, boolean exponent, boolean signed) {}

  private Writing anyWriting() {
    return new Writing(
        random.nextInt(10), random.nextInt(12), random.nextInt(3) == 0, random.nextBoolean());
  }

  private String cell(Writing w) {
    StringBuilder b = new StringBuilder(w.signed && random.nextBoolean() ? "-" : "");
    digits(b, w.whole);
    if (w.decimals > 0) {
      digits(b.append('.'), w.decimals);
    }
    if (w.exponent) {
      b.append(random.nextBoolean() ? "e+" : "e-")
          .append(Math.max(0, random.nextInt(50) - 47))
          .append(random.nextInt(random.nextInt(10) > 0 ? 3 : 10));
    }
    return b.toString();
  }

  private void digits(StringBuilder b, int count) {
    for (int i = 0; i < count; i++) {
      b.append(random.nextInt(10));
    }
  }

  private byte[] rows(String lineEnd) {
    return rows(ROWS, lineEnd);
  }

  private byte[] rows(int count, String lineEnd) {
    Writing[] writings = new Writing[COLUMNS];
    Arrays.setAll(writings, c -> anyWriting());
    StringBuilder b = new StringBuilder();
    for (int r = 0; r < count; r++) {
      for (int c = 0; c < COLUMNS; c++) {
        b.append(cell(writings[c])).append(c < COLUMNS - 1 ? "," : lineEnd);
      }
    }
    b.append("\n".repeat(Numbers.PADDING));
    return b.toString().getBytes(StandardCharsets.US_ASCII);
  }

  /** The start of the next row, or -1. */
  private int read(byte[] text, int start) {
    int next = steady.read(start, text.length, 0, 1);
    return steady.rows() == 1 ? next : -1;
  }

  /** Reads a row by both; the start of the next, or -1 where it is no row. */
  private int compare(byte[] text, int start) {
    int next = read(text, start);
    int p = start;
    for (int c = 0; c < COLUMNS; c++) {
      int end = numbers.read(p, 0, expected, 0);
      boolean right = end >= 0 && (c < COLUMNS - 1) == (text[end] == ',');
      if (next >= 0) {
        assertThat(right).as(shown(text, start)).isTrue();
        assertThat(number(blocks[c], 0))
            .as(shown(text, start))
            .isEqualByComparingTo(number(expected, 0));
      }
      if (!right) {
        return -1;
      }
      p = end + 1;
    }
    p += text[p - 1] == '\r' && text[p] == '\n' ? 1 : 0;
    if (next >= 0) {
      accepted++;
      assertThat(next).as(shown(text, start)).isEqualTo(p);
    } else {
      refused++;
      readGenerally(text, start, 0);
    }
    return p;
  }

  private static BigDecimal number(NumberBlock block, int row) {
    return BigDecimal.valueOf(block.mantissa(row), -block.power(row));
  }

  private static String shown(byte[] text, int start) {
    return new String(text, start, Math.min(60, text.length - start), StandardCharsets.US_ASCII);
  }

  private void begin(byte[] text) {
    begin(text, 1);
  }

  private void begin(byte[] text, int capacity) {
    Arrays.setAll(blocks, c -> new NumberBlock(capacity));
    steady = new SteadyRow(dialect, blocks, true);
    steady.from(text);
    numbers.from(text);
  }

  @Test
  void rowsWrittenAlikeAreReadAsTheGeneralParserReadsThem() {
    for (int k = 0; k < WRITINGS; k++) {
      byte[] text = rows(k % 2 == 0 ? "\n" : "\r\n");
      begin(text);
      int p = 0;
      for (int r = 0; r < ROWS && p >= 0; r++) {
        p = compare(text, p);
      }
    }
    assertThat(accepted).isGreaterThan(2 * WRITINGS);
    assertThat(refused).isGreaterThan(WRITINGS / 2);
  }

  /** Rows go to a block many at a time; where one is refused, the general parser reads it. */
  @Test
  void blocksAreReadAsTheGeneralParserReadsThem() {
    for (int k = 0; k < WRITINGS / 10; k++) {
      byte[] text = rows(MANY_ROWS, k % 2 == 0 ? "\n" : "\r\n");
      begin(text, MANY_ROWS);
      int p = 0;
      int row = 0;
      while (row < MANY_ROWS && p >= 0) {
        p = steady.read(p, text.length - Numbers.PADDING, row, MANY_ROWS);
        row += steady.rows();
        accepted += steady.rows();
        if (row < MANY_ROWS) {
          p = readGenerally(text, p, row);
          row++;
        }
      }
      compareBlocks(text, p < 0 ? row - 1 : MANY_ROWS);
    }
    assertThat(accepted).isGreaterThan(MANY_ROWS * WRITINGS / 40);
  }

  private int readGenerally(byte[] text, int start, int row) {
    int p = start;
    for (int c = 0; c < COLUMNS; c++) {
      int end = numbers.read(p, 0, blocks[c], row);
      if (end < 0 || (c < COLUMNS - 1) != (text[end] == ',')) {
        return -1;
      }
      p = end + 1;
    }
    steady.missed(start, row);
    return text[p - 1] == '\r' ? p + 1 : p;
  }

  private void compareBlocks(byte[] text, int rows) {
    int p = 0;
    for (int row = 0; row < rows; row++) {
      for (int c = 0; c < COLUMNS; c++) {
        int end = numbers.read(p, 0, expected, 0);
        boolean bits = expected.power(0) == NumberBlock.BITS;
        assertThat(blocks[c].power(row) == NumberBlock.BITS).isEqualTo(bits);
        if (bits) {
          assertThat(blocks[c].mantissa(row)).isEqualTo(expected.mantissa(0));
        } else {
          assertThat(number(blocks[c], row)).isEqualByComparingTo(number(expected, 0));
        }
        p = end + 1;
      }
      p += text[p - 1] == '\r' ? 1 : 0;
    }
  }

  /** Whatever one byte of a row is changed to, after its writing was learned. */
  @Test
  void aByteThatIsOtherwiseIsNeverReadWrongly() {
    for (int k = 0; k < WRITINGS; k++) {
      byte[] text = rows("\n");
      begin(text);
      int second = compare(text, 0);
      int third = second < 0 ? -1 : compare(text, second);
      for (int at = second; third >= 0 && at < third; at++) {
        byte was = text[at];
        for (byte odd : ODD_BYTES.getBytes(StandardCharsets.US_ASCII)) {
          text[at] = odd;
          steady.from(text);
          compareUntaught(text, second);
        }
        text[at] = was;
      }
    }
    assertThat(accepted).isGreaterThan(WRITINGS * ROWS);
  }

  private void compareUntaught(byte[] text, int start) {
    int before = refused;
    if (read(text, start) >= 0) {
      compare(text, start);
      assertThat(refused).isEqualTo(before);
    }
  }
}
