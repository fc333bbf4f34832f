package toothmark.capture.text;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Decimal digits in ASCII, eight of them in a word.
 *
 * <p>Source: D. Lemire, Number parsing at a gigabyte per second, Software: Practice and Experience
 * 51 (2021), doi:10.1002/spe.2984.
 */
final class Digits {

  private static final VarHandle WORDS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final long ZEROS = 0x3030303030303030L;
  private static final long HIGH = 0xF0F0F0F0F0F0F0F0L;
  private static final long LOW = 0x0F0F0F0F0F0F0F0FL;
  private static final long PAIRS = 0x000000ff000000ffL;
  private static final long[] TEN = new long[19];

  static {
    long power = 1;
    for (int i = 0; i < TEN.length; i++) {
      TEN[i] = power;
      power *= 10;
    }
  }

  private Digits() {}

  /** Eight bytes, the first the lowest. */
  static long word(byte[] text, int at) {
    return (long) WORDS.get(text, at);
  }

  /** How many digits stand at the start of a word. */
  static int count(long word) {
    long x = word ^ ZEROS;
    long other = (x + 0x0606060606060606L | x) & HIGH;
    return Long.numberOfTrailingZeros(other) >>> 3;
  }

  /** The number that the first digits of a word make behind those already read. */
  static long append(long number, long word, int count) {
    if (count == 1) {
      return 10 * number + (word & 15);
    }
    return count == 0 ? number : number * TEN[count] + eight((word << 64 - 8 * count) & LOW);
  }

  /** The number that eight digits make, each a byte from 0 to 9, the first the lowest. */
  static long eight(long digits) {
    long d = 10 * digits + (digits >>> 8);
    long high = (d & PAIRS) * 0x000f424000000064L;
    return high + (d >>> 16 & PAIRS) * 0x0000271000000001L >>> 32;
  }

  /** From 10^0 to 10^18. */
  static long powerOfTen(int power) {
    return TEN[power];
  }
}
