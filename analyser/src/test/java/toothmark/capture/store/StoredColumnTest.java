package toothmark.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Random;
import java.util.function.IntToLongFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is packed comes back bit for bit: the double nearest to mantissa · 10^power. */
class StoredColumnTest {

  private final BlockPacker packer = new BlockPacker();

  private static double nearest(long mantissa, int power) {
    return Double.parseDouble(BigDecimal.valueOf(mantissa, -power).toString()) + 0.0;
  }

  private void checkAll(StoredColumn column, double[] expected) {
    double[] back = new double[expected.length];
    column.read(0, back, 0, back.length);
    assertThat(back).containsExactly(expected);
    Random random = new Random(3);
    for (int i = 0; i < 200 && expected.length > 0; i++) {
      int first = random.nextInt(expected.length);
      int n = random.nextInt(expected.length - first + 1);
      column.read(first, back, 5 % (back.length - n + 1), n);
      for (int k = 0; k < n; k++) {
        assertThat(back[5 % (back.length - n + 1) + k]).isEqualTo(expected[first + k]);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 100, Long.MAX_VALUE})
  void numbersOfEveryKind(long budget) throws Exception {
    Random random = new Random(budget);
    for (int trial = 0; trial < 300; trial++) {
      try (SampleStore store = new SampleStore(budget)) {
        StoredColumn column = store.newColumn();
        int blocks = 1 + random.nextInt(4);
        double[] expected = new double[blocks * 50];
        int shift = random.nextInt(7) - 3;
        for (int b = 0; b < blocks; b++) {
          NumberBlock block = new NumberBlock(50);
          fill(random, block, shift, expected, 50 * b);
          column.append(packer.pack(block, 50, shift));
        }
        checkAll(column, expected);
      }
    }
  }

  private static void fill(
      Random random, NumberBlock block, int shift, double[] expected, int offset) {
    int bits = 1 + random.nextInt(62);
    int power = random.nextInt(12) - 9;
    int spread = random.nextInt(3) == 0 ? random.nextInt(12) + 1 : 1;
    int style = random.nextInt(6);
    long step = random.nextLong() >> 64 - Math.min(bits, 40);
    for (int i = 0; i < 50; i++) {
      long mantissa =
          switch (style) {
            case 0 -> step;
            case 1 -> step * i + (random.nextLong() >> 62);
            case 2 -> random.nextInt(2) * step;
            default -> random.nextLong() >> 64 - bits;
          };
      int p = power - random.nextInt(spread);
      block.set(i, mantissa, (byte) p);
      expected[offset + i] = nearest(mantissa, p + shift);
    }
  }

  @Test
  void aSteadyTimeColumnTakesNoRoom() throws Exception {
    try (SampleStore store = new SampleStore(0)) {
      StoredColumn column = store.newColumn();
      double[] expected = new double[30_000];
      for (int b = 0; b < 3; b++) {
        NumberBlock block = new NumberBlock(10_000);
        for (int i = 0; i < 10_000; i++) {
          long m = 125L * (10_000L * b + i) - 700;
          block.set(i, m, (byte) -7);
          expected[10_000 * b + i] = nearest(m, -7);
        }
        column.append(packer.pack(block, 10_000, 0));
      }
      assertThat(store.inFileBytes()).isZero();
      assertThat(column.lineEnd(0)).isEqualTo(10_000);
      assertThat(column.writtenStep()).isEqualTo(1e-7);
      checkAll(column, expected);
    }
  }

  @Test
  void roundedTimesTakeAByteEach() throws Exception {
    takesAByteEach(i -> Math.round(i * 20.8333333));
  }

  @Test
  void levelsFarApartTakeAByteEach() throws Exception {
    takesAByteEach(i -> i % 7 < 3 ? -20_003 : 4_980_001);
  }

  /** A column of millionths. */
  private void takesAByteEach(IntToLongFunction millionths) throws Exception {
    try (SampleStore store = new SampleStore(0)) {
      StoredColumn column = store.newColumn();
      NumberBlock block = new NumberBlock(10_000);
      double[] expected = new double[10_000];
      for (int i = 0; i < 10_000; i++) {
        long m = millionths.applyAsLong(i);
        block.set(i, m, (byte) -6);
        expected[i] = nearest(m, -6);
      }
      column.append(packer.pack(block, 10_000, 0));
      assertThat(store.inFileBytes()).isEqualTo(10_000);
      checkAll(column, expected);
    }
  }

  @Test
  void extremesAndLevels() throws Exception {
    try (SampleStore store = new SampleStore(1000)) {
      StoredColumn column = store.newColumn();
      NumberBlock block = new NumberBlock(4);
      for (int i = 0; i < 4; i++) {
        block.set(i, 5 * (i % 2), (byte) 0);
      }
      column.append(packer.pack(block, 4, -3));
      assertThat(column.lowest()).isZero();
      assertThat(column.highest()).isEqualTo(0.005);
      assertThat(column.isTwoLevel()).isTrue();
      block.set(0, 6, (byte) 0);
      column.append(packer.pack(block, 4, -3));
      assertThat(column.isTwoLevel()).isFalse();
      assertThat(column.count()).isEqualTo(8);
    }
  }

  /** Marked cells at every place of a block, across block borders too. */
  @Test
  void marksAreMended() throws Exception {
    byte x = NumberBlock.MISSING;
    byte up = NumberBlock.ABOVE_RANGE;
    byte down = NumberBlock.BELOW_RANGE;
    byte[][] cells = {{x, x, 1, x}, {x, x, 5, up}, {up, x, down, x}, {x, x, x, x}, {9, x, x, x}};
    double[] expected = {1, 1, 1, 2, 3, 4, 5, 9, 9, 5, 1, 0, 0, 0, 0, 0, 9, 9, 9, 9};
    for (int i = 11; i < 16; i++) {
      expected[i] = 1 + (9.0 - 1) / 6 * (i - 10);
    }
    try (SampleStore store = new SampleStore(0)) {
      StoredColumn column = store.newColumn();
      for (byte[] block : cells) {
        NumberBlock b = new NumberBlock(4);
        for (int i = 0; i < 4; i++) {
          boolean mark = block[i] >= NumberBlock.BELOW_RANGE;
          b.set(i, mark ? 77 : block[i], mark ? block[i] : 0);
        }
        column.append(packer.pack(b, 4, 0));
      }
      checkAll(column, expected);
      assertThat(column.marked(x)).isEqualTo(14);
      assertThat(column.marked(up)).isEqualTo(2);
      assertThat(column.marked(down)).isEqualTo(1);
      assertThat(column.missingAtEnd()).isEqualTo(3);
      assertThat(column.isNumber(2)).isTrue();
      assertThat(column.isNumber(3)).isFalse();
    }
  }

  @Test
  void readingBeyondTheEnd() throws Exception {
    try (SampleStore store = new SampleStore(0)) {
      StoredColumn column = store.newColumn();
      NumberBlock block = new NumberBlock(1);
      block.set(0, 1, (byte) 0);
      column.append(packer.pack(block, 1, 0));
      assertThatThrownBy(() -> column.read(0, new double[2], 0, 2))
          .isInstanceOf(IndexOutOfBoundsException.class)
          .hasMessage("samples 0 to 2 of 1");
    }
  }
}
