package toothmark.capture.vcd;

import java.util.Arrays;

/** What one identifier code recorded: its levels, and those of each bit of a vector. */
final class Values {

  private static final int WIDEST_WORD = 53;

  /** The levels of a signal and when each began. */
  static final class Track {
    private double[] times = new double[8];
    private double[] levels = new double[8];
    private int size;

    /** Adds a level; one that is repeated is no change, and the last one at a time counts. */
    void add(double time, double level) {
      if (size > 0 && times[size - 1] == time) {
        size--;
      }
      if (size > 0 && levels[size - 1] == level) {
        return;
      }
      if (size == times.length) {
        times = Arrays.copyOf(times, 2 * size);
        levels = Arrays.copyOf(levels, 2 * size);
      }
      times[size] = time;
      levels[size++] = level;
    }

    /** Adds an instant; two at one time are one. */
    void addEvent(double time) {
      if (size == 0 || times[size - 1] != time) {
        add(time, size % 2);
      }
    }

    boolean isEmpty() {
      return size == 0;
    }

    double[] times() {
      return Arrays.copyOf(times, size);
    }

    double[] levels() {
      return Arrays.copyOf(levels, size);
    }
  }

  private final int width;
  private final boolean signed;
  private final boolean isEvent;
  private final Track word = new Track();
  private final Track[] bits;
  private long unknown;

  /**
   * Makes room for values.
   *
   * @param width declared number of bits
   * @param kind what the variable is
   */
  Values(int width, Kind kind) {
    this.width = width;
    this.isEvent = kind == Kind.EVENT;
    this.signed = kind == Kind.INTEGER;
    this.bits = new Track[kind == Kind.LOGIC && width > 1 ? width : 0];
    for (int i = 0; i < bits.length; i++) {
      bits[i] = new Track();
    }
  }

  /** Kinds of variable that are told apart. */
  enum Kind {
    LOGIC,
    EVENT,
    INTEGER,
    REAL
  }

  /** Whether it has no level, only instants. */
  boolean isEvent() {
    return isEvent;
  }

  int width() {
    return width;
  }

  Track word() {
    return word;
  }

  /** Tracks of the bits, rightmost first; none for a scalar, an integer or a real. */
  Track[] bits() {
    return bits;
  }

  /** How many values were x or z, in whole or in part. */
  long unknown() {
    return unknown;
  }

  void scalar(double time, byte value) {
    if (isEvent) {
      word.addEvent(time);
    } else if (value == '0' || value == '1') {
      if (bits.length > 0) {
        vector(time, new byte[] {value});
      } else {
        word.add(time, value - '0');
      }
    } else {
      unknown++;
    }
  }

  void real(double time, double value) {
    word.add(time, value);
  }

  /**
   * A vector value. A shorter one is extended on the left: by 0 where it begins with 0 or 1, else
   * by its x or z (IEEE Std 1364-2005, 18.2.1).
   *
   * @param digits 0, 1, x, z, leftmost first
   */
  void vector(double time, byte[] digits) {
    boolean known = true;
    double value = 0;
    for (int i = 0; i < width; i++) {
      byte digit = digit(digits, i);
      boolean bit = digit == '0' || digit == '1';
      known &= bit;
      if (bit && bits.length > 0) {
        bits[i].add(time, digit - '0');
      }
      if (digit == '1') {
        boolean sign = signed && i == width - 1;
        value += sign ? -Math.scalb(1.0, i) : Math.scalb(1.0, i);
      }
    }
    if (!known) {
      unknown++;
    } else if (width <= WIDEST_WORD) {
      word.add(time, value);
    }
  }

  /** A digit counted from the right. */
  private static byte digit(byte[] digits, int fromRight) {
    int i = digits.length - 1 - fromRight;
    if (i >= 0) {
      return digits[i];
    }
    return digits[0] == '1' ? (byte) '0' : digits[0];
  }
}
