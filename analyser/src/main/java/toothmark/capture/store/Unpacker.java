package toothmark.capture.store;

import java.nio.ByteBuffer;
import java.util.Arrays;

/** Turns packed elements back into the doubles that the text stands for. */
final class Unpacker {

  private Unpacker() {}

  /**
   * Unpacks elements of a block.
   *
   * @param block whose elements
   * @param from index in the block of the first element
   * @param in their bytes, from its position on
   * @param run where to put the numbers
   */
  static void unpack(PackedBlock block, int from, ByteBuffer in, Run run) {
    double[] into = run.into();
    int offset = run.offset();
    int n = run.length();
    int p = in.position();
    switch (block.element) {
      case SINGLE -> {
        for (int i = 0; i < n; i++) {
          into[offset + i] = in.getFloat(p + 4 * i);
        }
      }
      case DOUBLE -> {
        for (int i = 0; i < n; i++) {
          into[offset + i] = in.getDouble(p + 8 * i);
        }
      }
      case INTEGER -> {
        integers(block, in, run);
        addLine(block.step, from, run);
        scale(block.power, run);
      }
    }
  }

  private static void integers(PackedBlock block, ByteBuffer in, Run run) {
    double[] into = run.into();
    int offset = run.offset();
    int n = run.length();
    long base = block.base;
    long unit = block.unit;
    switch (block.width) {
      case 0 -> Arrays.fill(into, offset, offset + n, base);
      case 1 -> {
        byte[] elements = new byte[n];
        in.get(elements);
        for (int i = 0; i < n; i++) {
          into[offset + i] = base + elements[i] * unit;
        }
      }
      case 2 -> {
        short[] elements = new short[n];
        in.asShortBuffer().get(elements);
        for (int i = 0; i < n; i++) {
          into[offset + i] = base + elements[i];
        }
      }
      case 4 -> {
        int[] elements = new int[n];
        in.asIntBuffer().get(elements);
        for (int i = 0; i < n; i++) {
          into[offset + i] = base + elements[i];
        }
      }
      default -> {
        long[] elements = new long[n];
        in.asLongBuffer().get(elements);
        for (int i = 0; i < n; i++) {
          into[offset + i] = base + elements[i];
        }
      }
    }
  }

  /** Exact: every number up to here is an integer within 2^53. */
  private static void addLine(long step, int from, Run run) {
    if (step != 0) {
      for (int i = 0; i < run.length(); i++) {
        run.into()[run.offset() + i] += PackedBlock.line(step, (long) from + i);
      }
    }
  }

  private static void scale(int power, Run run) {
    double[] into = run.into();
    int end = run.offset() + run.length();
    if (power < 0) {
      double divisor = PowersOfTen.asDouble(-power);
      for (int i = run.offset(); i < end; i++) {
        into[i] /= divisor;
      }
    } else if (power > 0) {
      double factor = PowersOfTen.asDouble(power);
      for (int i = run.offset(); i < end; i++) {
        into[i] *= factor;
      }
    }
  }
}
