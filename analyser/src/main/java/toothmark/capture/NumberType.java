package toothmark.capture;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a number is written in a binary file. */
public enum NumberType {
  /** Signed byte. */
  INT8(1),
  /** Unsigned byte. */
  UINT8(1),
  /** Signed, two bytes. */
  INT16(2),
  /** Unsigned, two bytes. */
  UINT16(2),
  /** Signed, three bytes. */
  INT24(3),
  /** Signed, four bytes. */
  INT32(4),
  /** Unsigned, four bytes. */
  UINT32(4),
  /** Signed, eight bytes. */
  INT64(8),
  /** Unsigned, eight bytes; beyond 2^63 rounded to a double. */
  UINT64(8),
  /** IEEE 754 half, two bytes. */
  FLOAT16(2),
  /** IEEE 754 single, four bytes. */
  FLOAT32(4),
  /** IEEE 754 double, eight bytes. */
  FLOAT64(8);

  private static final double HALF_SUBNORMAL = 0x1p-24;

  private final int bytes;

  NumberType(int bytes) {
    this.bytes = bytes;
  }

  /**
   * How long a number is.
   *
   * @return bytes
   */
  public int bytes() {
    return bytes;
  }

  /**
   * The word for it in a job sheet.
   *
   * @return such as {@code int16}
   */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * The type that a word stands for.
   *
   * @param word such as {@code int16}
   * @return empty when there is none
   */
  public static Optional<NumberType> named(String word) {
    return Arrays.stream(values()).filter(t -> t.word().equals(word)).findFirst();
  }

  /**
   * The number that starts at a byte.
   *
   * @param from the bytes, in the order of the file
   * @param at index of its first byte
   * @return the number; whole ones of up to 53 bits are exact
   */
  public double read(ByteBuffer from, int at) {
    return switch (this) {
      case INT8 -> from.get(at);
      case UINT8 -> from.get(at) & 0xff;
      case INT16 -> from.getShort(at);
      case UINT16 -> from.getShort(at) & 0xffff;
      case INT24 -> threeBytes(from, at);
      case INT32 -> from.getInt(at);
      case UINT32 -> from.getInt(at) & 0xffff_ffffL;
      case INT64 -> from.getLong(at);
      case UINT64 -> unsigned(from.getLong(at));
      case FLOAT16 -> half(from.getShort(at));
      case FLOAT32 -> from.getFloat(at);
      case FLOAT64 -> from.getDouble(at);
    };
  }

  private static double threeBytes(ByteBuffer from, int at) {
    boolean big = from.order() == ByteOrder.BIG_ENDIAN;
    int high = from.get(at + (big ? 0 : 2)) << 16;
    return high | (from.get(at + 1) & 0xff) << 8 | from.get(at + (big ? 2 : 0)) & 0xff;
  }

  private static double unsigned(long bits) {
    return bits >= 0 ? bits : ((bits >>> 1) | (bits & 1)) * 2.0;
  }

  /** IEEE 754-2008, 3.6: one bit sign, five exponent, ten fraction. */
  private static double half(short bits) {
    int exponent = bits >> 10 & 0x1f;
    int fraction = bits & 0x3ff;
    double size =
        exponent == 0
            ? fraction * HALF_SUBNORMAL
            : exponent == 0x1f
                ? fraction == 0 ? Double.POSITIVE_INFINITY : Double.NaN
                : Math.scalb(fraction + 1024.0, exponent - 25);
    return bits < 0 ? -size : size;
  }
}
