package toothmark.capture.store;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import toothmark.capture.store.PackedBlock.Element;
import toothmark.capture.store.PackedBlock.Shape;

/**
 * Packs blocks of numbers without loss. Each thread needs its own.
 *
 * <p>Decimal numbers with a common power of ten become integers of 0, 1, 2, 4 or 8 bytes, less a
 * straight line where that makes them smaller (a time column shrinks to nothing). Where no common
 * power keeps every mantissa within 2^53, the doubles themselves are kept, as singles where that
 * loses nothing.
 */
public final class BlockPacker {

  private static final int[] NO_MARKS = {};
  private static final int WORTH_A_LINE = 8;

  private long[] scratch = new long[0];
  private Shape shape;
  private int lowest;
  private int highest;
  private long min;
  private long max;

  /** Makes a packer. */
  public BlockPacker() {}

  /**
   * Packs the first numbers of a block.
   *
   * @param block what a reader understood; its marked rows are overwritten by their neighbours'
   *     values
   * @param count how many
   * @param shift power of ten that brings the numbers to the unit of the memory, such as -3 for mV
   * @return the packed numbers
   */
  public PackedBlock pack(NumberBlock block, int count, int shift) {
    shape = new Shape();
    shape.count = count;
    int[] marks = NO_MARKS;
    if (isOfOnePower(block.powers, count)) {
      lowest = block.powers[0];
      highest = lowest;
    } else {
      marks = marks(block.powers, count);
      if (nextNumber(block.powers, 0, count) == count) {
        return new PackedBlock(shape, new byte[0], marks);
      }
      fill(block, count, marks);
      range(block.powers, count);
    }
    long[] integers = commonPower(block, count, shift);
    byte[] payload =
        integers == null
            ? packDoubles(doubles(block, count, shift))
            : packIntegers(integers, count);
    return new PackedBlock(shape, payload, marks);
  }

  /** Whether there are numbers, all of the same power. */
  private static boolean isOfOnePower(byte[] powers, int count) {
    return count > 0
        && powers[0] < NumberBlock.FIRST_MARK
        && Arrays.mismatch(powers, 0, count - 1, powers, 1, count) < 0;
  }

  private void range(byte[] powers, int count) {
    lowest = powers[0];
    highest = powers[0];
    for (int i = 1; i < count; i++) {
      lowest = Math.min(lowest, powers[i]);
      highest = Math.max(highest, powers[i]);
    }
  }

  /** Lists the runs of marked rows: start, end, mark. */
  private static int[] marks(byte[] powers, int count) {
    int[] runs = NO_MARKS;
    for (int i = 0; i < count; i++) {
      byte mark = powers[i];
      if (mark < NumberBlock.FIRST_MARK || mark == NumberBlock.BITS) {
        continue;
      }
      int end = i + 1;
      while (end < count && powers[end] == mark) {
        end++;
      }
      runs = Arrays.copyOf(runs, runs.length + 3);
      runs[runs.length - 3] = i;
      runs[runs.length - 2] = end;
      runs[runs.length - 1] = mark;
      i = end - 1;
    }
    return runs;
  }

  /** Replaces marked rows by a neighbour. */
  private static void fill(NumberBlock block, int count, int[] runs) {
    for (int r = 0; r < runs.length; r += 3) {
      int from = runs[r] > 0 ? runs[r] - 1 : nextNumber(block.powers, runs[r + 1], count);
      if (from < count) {
        Arrays.fill(block.mantissas, runs[r], runs[r + 1], block.mantissas[from]);
        Arrays.fill(block.powers, runs[r], runs[r + 1], block.powers[from]);
      }
    }
  }

  private static int nextNumber(byte[] powers, int from, int count) {
    int i = from;
    while (i < count && powers[i] >= NumberBlock.FIRST_MARK && powers[i] != NumberBlock.BITS) {
      i++;
    }
    return i;
  }

  /** The numbers as integers times one power of ten, or null when that is not exact. */
  private long[] commonPower(NumberBlock block, int count, int shift) {
    shape.power = lowest + shift;
    shape.finest = highest == NumberBlock.BITS ? Byte.MIN_VALUE : shape.power;
    if (highest == NumberBlock.BITS || !PowersOfTen.fitsLong(highest - lowest)) {
      return null;
    }
    long[] integers = block.mantissas;
    if (highest != lowest) {
      integers = rescaled(block, count);
    }
    if (integers == null) {
      return null;
    }
    extremes(integers, count);
    return PowersOfTen.isExact(min, shape.power) && PowersOfTen.isExact(max, shape.power)
        ? integers
        : null;
  }

  private long[] rescaled(NumberBlock block, int count) {
    if (scratch.length < count) {
      scratch = new long[count];
    }
    for (int i = 0; i < count; i++) {
      long mantissa = block.mantissas[i];
      long factor = PowersOfTen.asLong(block.powers[i] - lowest);
      long scaled = mantissa * factor;
      if (Math.multiplyHigh(mantissa, factor) != scaled >> 63) {
        return null;
      }
      scratch[i] = scaled;
    }
    return scratch;
  }

  private void extremes(long[] values, int count) {
    long low = values[0];
    long high = values[0];
    for (int i = 1; i < count; i++) {
      low = Math.min(low, values[i]);
      high = Math.max(high, values[i]);
    }
    min = low;
    max = high;
  }

  private byte[] packIntegers(long[] values, int count) {
    shape.lowest = PowersOfTen.scale(min, shape.power);
    shape.highest = PowersOfTen.scale(max, shape.power);
    shape.twoLevels = onlyExtremes(values, count);
    if (shape.twoLevels && width(max - min) > 1) {
      return packLevels(values, count);
    }
    tryLine(values, count);
    long range = max - min;
    shape.base = min + (range + 1) / 2;
    shape.width = width(range);
    byte[] payload = new byte[count * shape.width];
    if (shape.step != 0 && shape.width > 0) {
      values = withoutLine(values, count);
    }
    write(values, count, payload);
    return payload;
  }

  /** Of two levels far apart it is enough to know which. */
  private byte[] packLevels(long[] values, int count) {
    shape.base = min;
    shape.unit = max - min;
    shape.width = 1;
    byte[] payload = new byte[count];
    for (int i = 0; i < count; i++) {
      payload[i] = (byte) (values[i] == min ? 0 : 1);
    }
    return payload;
  }

  private long[] withoutLine(long[] values, int count) {
    long[] rest = new long[count];
    for (int i = 0; i < count; i++) {
      rest[i] = values[i] - PackedBlock.line(shape.step, i);
    }
    return rest;
  }

  private void write(long[] values, int count, byte[] payload) {
    long base = shape.base;
    ByteBuffer out = ByteBuffer.wrap(payload).order(ByteOrder.LITTLE_ENDIAN);
    switch (shape.width) {
      case 1 -> {
        for (int i = 0; i < count; i++) {
          payload[i] = (byte) (values[i] - base);
        }
      }
      case 2 -> {
        short[] elements = new short[count];
        for (int i = 0; i < count; i++) {
          elements[i] = (short) (values[i] - base);
        }
        out.asShortBuffer().put(elements);
      }
      case 4 -> {
        int[] elements = new int[count];
        for (int i = 0; i < count; i++) {
          elements[i] = (int) (values[i] - base);
        }
        out.asIntBuffer().put(elements);
      }
      case 8 -> {
        long[] elements = new long[count];
        for (int i = 0; i < count; i++) {
          elements[i] = values[i] - base;
        }
        out.asLongBuffer().put(elements);
      }
      default -> {}
    }
  }

  private boolean onlyExtremes(long[] values, int count) {
    for (int i = 0; i < count; i++) {
      if (values[i] != min && values[i] != max) {
        return false;
      }
    }
    return true;
  }

  /**
   * Takes a straight line off when that leaves less to keep; min and max become those of the rest.
   */
  private void tryLine(long[] values, int count) {
    long rise = values[count - 1] - values[0];
    boolean small = Math.max(-min, max) < PowersOfTen.EXACT_INTEGER / 2 && max - min < 1L << 46;
    if (count < WORTH_A_LINE || Math.abs(rise) < max - min || !small) {
      return;
    }
    long step = Math.round((double) (rise << 16) / (count - 1));
    long low = Long.MAX_VALUE;
    long high = Long.MIN_VALUE;
    for (int i = 0; i < count; i++) {
      long rest = values[i] - PackedBlock.line(step, i);
      low = Math.min(low, rest);
      high = Math.max(high, rest);
    }
    if (width(high - low) < width(max - min)) {
      min = low;
      max = high;
      shape.step = step;
    }
  }

  private static int width(long range) {
    if (range <= 0xff) {
      return range == 0 ? 0 : 1;
    }
    return range <= 0xffff ? 2 : range <= 0xffff_ffffL ? 4 : 8;
  }

  private static double[] doubles(NumberBlock block, int count, int shift) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      long mantissa = block.mantissas[i];
      int power = block.powers[i];
      values[i] =
          power == NumberBlock.BITS
              ? Double.longBitsToDouble(mantissa) + 0.0
              : nearest(mantissa, power + shift);
    }
    return values;
  }

  private static double nearest(long mantissa, int power) {
    return PowersOfTen.isExact(mantissa, power)
        ? PowersOfTen.scale(mantissa, power)
        : BigDecimal.valueOf(mantissa, -power).doubleValue();
  }

  private byte[] packDoubles(double[] values) {
    boolean single = true;
    double low = values[0];
    double high = values[0];
    for (double v : values) {
      single &= (float) v == v;
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    shape.lowest = low;
    shape.highest = high;
    shape.twoLevels = onlyExtremes(values);
    shape.element = single ? Element.SINGLE : Element.DOUBLE;
    shape.width = single ? Float.BYTES : Double.BYTES;
    ByteBuffer out =
        ByteBuffer.allocate(values.length * shape.width).order(ByteOrder.LITTLE_ENDIAN);
    for (double v : values) {
      if (single) {
        out.putFloat((float) v);
      } else {
        out.putDouble(v);
      }
    }
    return out.array();
  }

  private boolean onlyExtremes(double[] values) {
    for (double v : values) {
      if (v != shape.lowest && v != shape.highest) {
        return false;
      }
    }
    return true;
  }
}
