package toothmark.capture.text;

import toothmark.capture.store.NumberBlock;

/**
 * Reads rows whose cells are written alike from row to row, as most recorders write them: the place
 * of decimal mark, exponent and delimiter is remembered of each column and checked in every row, so
 * that nothing need be searched. What is written otherwise is left to {@link Numbers}.
 */
final class SteadyRow {

  private static final int OTHERWISE = -1;

  private static final int WORD = 8;

  /** Before the mark, so that it stands in the first word. */
  private static final int MOST_WHOLE = 7;

  /** So many digits are always below 2^53. */
  private static final int MOST_DIGITS = 15;

  /** With the byte that ends it a cell then lies within two words. */
  private static final int MOST_BYTES = 15;

  private static final int MOST_EXACT_POWER = 22;
  private static final int EXPONENT_BYTES = 4;

  /** Misses in a row after which a new writing is learned, and after which it is given up ... */
  private static final int LEARN_AFTER = 2;

  private static final int GIVE_UP_AFTER = 16;

  /** ... for so many rows. */
  private static final int REST_ROWS = 512;

  /** How the cells of one column are written, behind their sign: two words of bytes. */
  private static final class Writing {

    /** Bytes that must stand there, '0' for a digit and '+' for the sign of an exponent. */
    long like;

    long likeThen;

    /** What is added to the difference, so that it carries into the bits where it is wrong. */
    long carry;

    long carryThen;
    long wrong;
    long wrongThen;
    boolean usable;
    int length;
    int digits;
    int decimals;
    boolean exponent;

    /** Power of ten, and the bytes of the exponent that it comes from. */
    int power;

    int exponentBytes;
    NumberBlock into;

    /** Digits before the mark, and after it, where the byte behind the first word moves in. */
    long whole;

    long after;

    /** Brings the first eight digits, or fewer, to the end of a word. */
    long first;

    /** Digits behind the first eight, and what brings them to the end of a word. */
    long secondDigits;

    long second;
    long factor;

    private void expect(int at, int byteLike, int carries, int bits) {
      int shift = 8 * (at % WORD);
      if (at < WORD) {
        like |= (long) byteLike << shift;
        carry |= (long) carries << shift;
        wrong |= (long) bits << shift;
      } else {
        likeThen |= (long) byteLike << shift;
        carryThen |= (long) carries << shift;
        wrongThen |= (long) bits << shift;
      }
    }

    void expectDigit(int at) {
      expect(at, '0', 0x06, 0xf0);
    }

    void expectByte(int at, byte one) {
      expect(at, one, 0x7f, 0x80);
    }

    /** '+' or '-', or two bytes between them; which it is is looked at with the exponent. */
    void expectSign(int at) {
      expect(at, '+', 0, 0xf9);
    }
  }

  private final NumberBlock[] blocks;
  private final Writing[] writings;
  private final byte decimalMark;
  private final byte delimiter;
  private byte[] text;
  private boolean learned;
  private int rows;
  private int misses;
  private int rest;

  /**
   * Knows no writing yet.
   *
   * @param dialect of the text
   * @param blocks where the numbers of each column go
   * @param allNumbers whether every column is stored and holds plain numbers
   */
  SteadyRow(Dialect dialect, NumberBlock[] blocks, boolean allNumbers) {
    this.blocks = blocks;
    decimalMark = (byte) dialect.decimalMark();
    delimiter = (byte) dialect.delimiter();
    writings = new Writing[blocks.length];
    rest = allNumbers && dialect.delimiter() != Dialect.BLANKS ? 0 : Integer.MAX_VALUE;
  }

  /** The bytes to read from; {@link Numbers#PADDING} of them must follow the last row. */
  void from(byte[] bytes) {
    text = bytes;
  }

  /**
   * Reads rows as long as they are written alike.
   *
   * @param start first byte of the first
   * @param to end of the text, exclusive
   * @param row where it goes in the blocks
   * @param capacity of the blocks
   * @return first byte of the first row that was not read; {@link #rows} tells how many were
   */
  int read(int start, int to, int row, int capacity) {
    int p = start;
    int r = row;
    while (learned && r < capacity && p < to) {
      int next = row(p, r);
      if (next < 0) {
        break;
      }
      p = next;
      r++;
    }
    rows = r - row;
    misses = rows > 0 ? 0 : misses;
    return p;
  }

  /** How many rows were read last. */
  int rows() {
    return rows;
  }

  private int row(int start, int row) {
    int p = start;
    for (Writing w : writings) {
      p = cell(w, p, row);
      if (p < 0) {
        return OTHERWISE;
      }
    }
    return text[p - 1] == '\r' ? afterReturn(p) : p;
  }

  private int afterReturn(int p) {
    return text[p] == '\n' ? p + 1 : OTHERWISE;
  }

  /** Reads a cell; gives the byte behind the one that ends it. */
  private int cell(Writing w, int start, int row) {
    int minus = text[start] == '-' ? 1 : 0;
    int p = start + minus;
    long first = Digits.word(text, p) ^ w.like;
    long second = Digits.word(text, p + WORD) ^ w.likeThen;
    long wrong = (first + w.carry | first) & w.wrong;
    wrong |= (second + w.carryThen | second) & w.wrongThen;
    long digits = first & w.whole;
    if (w.decimals > 0) {
      digits |= (first >>> 8 | second << 56) & w.after;
      second >>>= 8;
    }
    long mantissa = Digits.eight(digits * w.first);
    if (w.digits > WORD) {
      mantissa = mantissa * w.factor + Digits.eight((second & w.secondDigits) * w.second);
    }
    p += w.length;
    if (w.exponent && !isPowerOf(w, (int) Digits.word(text, p - EXPONENT_BYTES))) {
      return OTHERWISE;
    }
    w.into.set(row, (mantissa ^ -minus) + minus, (byte) w.power);
    return wrong == 0 ? p + 1 : OTHERWISE;
  }

  /** Takes an exponent in, which mostly is that of the row before. */
  private static boolean isPowerOf(Writing w, int e) {
    if (e == w.exponentBytes) {
      return true;
    }
    boolean minus = (e >>> 8 & 0xff) == '-';
    int size = 10 * (e >>> 16 & 15) + (e >>> 24 & 15);
    int power = (minus ? -size : size) - w.decimals;
    if (!minus && (e >>> 8 & 0xff) != '+' || Math.abs(power) > MOST_EXACT_POWER) {
      return false;
    }
    w.exponentBytes = e;
    w.power = power;
    return true;
  }

  /**
   * Told of a row that was written otherwise.
   *
   * @param start first byte of a row of numbers
   */
  void missed(int start) {
    if (rest > 0) {
      rest--;
      return;
    }
    misses++;
    if (!learned || misses >= LEARN_AFTER) {
      learned = learn(start);
    }
    if (misses > GIVE_UP_AFTER || !learned) {
      rest = REST_ROWS;
      misses = 0;
      learned = false;
    }
  }

  private boolean learn(int start) {
    int p = start;
    for (int c = 0; c < writings.length; c++) {
      writings[c] = learnCell(blocks[c], text[p] == '-' ? p + 1 : p);
      p += (text[p] == '-' ? 1 : 0) + writings[c].length;
      boolean last = c == writings.length - 1;
      boolean ends = last ? text[p] == '\n' || text[p] == '\r' : text[p] == delimiter;
      if (!writings[c].usable || !ends) {
        return false;
      }
      p++;
    }
    return true;
  }

  private Writing learnCell(NumberBlock into, int first) {
    Writing w = new Writing();
    w.into = into;
    int p = digits(first);
    int whole = p - first;
    if (text[p] == decimalMark) {
      int mark = p++;
      p = digits(p);
      w.decimals = p - mark - 1;
    }
    w.power = -w.decimals;
    w.digits = whole + w.decimals;
    w.exponent = (text[p] | 0x20) == 'e';
    w.length = p - first + (w.exponent ? EXPONENT_BYTES : 0);
    w.usable =
        w.digits > 0 && whole <= MOST_WHOLE && w.digits <= MOST_DIGITS && w.length <= MOST_BYTES;
    if (w.usable) {
      expect(w, first, p - first);
      int inFirst = Math.min(w.digits, WORD);
      w.whole = lowBytes(whole);
      w.after = w.decimals == 0 ? 0 : lowBytes(inFirst) & ~w.whole;
      w.first = 1L << 8 * (WORD - inFirst);
      w.secondDigits = lowBytes(w.digits - inFirst);
      w.second = 1L << 8 * (WORD - Math.max(1, w.digits - inFirst));
      w.factor = Digits.powerOfTen(w.digits - inFirst);
    }
    return w;
  }

  private void expect(Writing w, int first, int exponentAt) {
    for (int i = 0; i <= w.length; i++) {
      byte b = text[first + i];
      if (w.exponent && i == exponentAt + 1) {
        w.expectSign(i);
      } else if (b >= '0' && b <= '9') {
        w.expectDigit(i);
      } else {
        w.expectByte(i, b);
      }
    }
  }

  private static long lowBytes(int count) {
    return count >= WORD ? -1 : (1L << 8 * count) - 1;
  }

  private int digits(int from) {
    int p = from;
    while (text[p] >= '0' && text[p] <= '9') {
      p++;
    }
    return p;
  }
}
