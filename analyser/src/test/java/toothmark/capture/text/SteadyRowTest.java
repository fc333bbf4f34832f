package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import toothmark.capture.store.NumberBlock;

/** A remembered writing gives what the general parser gives, or nothing. */
class SteadyRowTest {

  private static final int COLUMNS = 3;
  private static final int ROWS = 12;
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
          .append(random.nextInt(3))
          .append(random.nextInt(10));
    }
    return b.toString();
  }

  private void digits(StringBuilder b, int count) {
    for (int i = 0; i < count; i++) {
      b.append(random.nextInt(10));
    }
  }

  private byte[] rows(String lineEnd) {
    Writing[] writings = new Writing[COLUMNS];
    Arrays.setAll(writings, c -> anyWriting());
    StringBuilder b = new StringBuilder();
    for (int r = 0; r < ROWS; r++) {
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
        assertThat(blocks[c].mantissa(0)).as(shown(text, start)).isEqualTo(expected.mantissa(0));
        assertThat(blocks[c].power(0)).as(shown(text, start)).isEqualTo(expected.power(0));
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
      steady.missed(start);
    }
    return p;
  }

  private static String shown(byte[] text, int start) {
    return new String(text, start, Math.min(60, text.length - start), StandardCharsets.US_ASCII);
  }

  private void begin(byte[] text) {
    Arrays.setAll(blocks, c -> new NumberBlock(1));
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
