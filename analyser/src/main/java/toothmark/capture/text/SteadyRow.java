package toothmark.capture.text;

import toothmark.capture.store.NumberBlock;

/**
 * Reads rows whose cells are written alike from row to row, as most recorders write them: the place
 * of decimal mark, exponent and delimiter is remembered of each column and checked in every row, so
 * that nothing need be searched. What is written otherwise is left to {@link Numbers}.
 */
final class SteadyRow {

  /** Rows that are read column by column before the next are; their bytes stay in the cache. */
  private static final int ROWS_AT_ONCE = 64;

  /** Of a block, so that with 17 decades more no row has one over 22, which would not be exact. */
  private static final int HIGHEST_POWER = 5;

  /** Misses in a row after which a new writing is learned, and after which it is given up ... */
  private static final int LEARN_AFTER = 2;

  private static final int GIVE_UP_AFTER = 16;

  /** ... for so many rows. */
  private static final int REST_ROWS = 512;

  private final NumberBlock[] blocks;
  private final Writing[] writings;
  private final int[] starts = new int[ROWS_AT_ONCE + 1];
  private final int[] cells = new int[ROWS_AT_ONCE];
  private final long[] first = new long[ROWS_AT_ONCE];
  private final long[] then = new long[ROWS_AT_ONCE];
  private final long[] minus = new long[ROWS_AT_ONCE];
  private final long[] wrong = new long[ROWS_AT_ONCE];
  private final byte decimalMark;
  private final byte delimiter;
  private byte[] text;
  private int shortest;
  private int length;
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
    boolean alike = learned;
    while (alike && r < capacity && p < to) {
      int found = findRows(p, to, Math.min(ROWS_AT_ONCE, capacity - r));
      int read = readRows(r, found);
      p = starts[read];
      r += read;
      alike = read == found;
    }
    rows = r - row;
    misses = rows > 0 ? 0 : misses;
    return p;
  }

  /** Told that the blocks are empty again: their power is the lowest that the last ones needed. */
  void newBlock() {
    for (int c = 0; learned && c < writings.length; c++) {
      writings[c].raise();
    }
  }

  /** Told to read nothing from here on. */
  void giveUp() {
    learned = false;
    rest = Integer.MAX_VALUE;
  }

  /** How many rows were read last. */
  int rows() {
    return rows;
  }

  /** Finds where rows start, each mostly as long as the one before; gives how many. */
  private int findRows(int start, int to, int most) {
    int p = start;
    int n = 0;
    while (n < most && p < to) {
      int next = p + length;
      if (next > to || text[next - 1] != '\n') {
        next = p + shortest;
        while (next <= to && text[next - 1] != '\n') {
          next++;
        }
        length = next - p;
      }
      starts[n++] = p;
      p = next;
    }
    starts[n] = p;
    return n;
  }

  /** Reads rows column by column; gives how many from the first on are written as expected. */
  private int readRows(int row, int found) {
    System.arraycopy(starts, 0, cells, 0, found);
    int right = found;
    for (int c = 0; c < writings.length; c++) {
      fetch(writings[c], right);
      read(writings[c], right);
      blocks[c].setMantissas(row, right, first, minus);
      right = firstWrong(right);
    }
    for (int i = 0; i < right; i++) {
      int end = cells[i];
      if (end != starts[i + 1] && (end + 1 != starts[i + 1] || text[end - 1] != '\r')) {
        right = i;
      }
    }
    for (int c = 0; c < writings.length; c++) {
      blocks[c].setPower(row, row + right, (byte) writings[c].power);
    }
    return right;
  }

  /** Fetches the words of cells behind their signs, less what must stand there; moves behind. */
  private void fetch(Writing w, int count) {
    for (int i = 0; i < count; i++) {
      int p = cells[i];
      int sign = ((text[p] & 0xff ^ '-') - 1) >>> 31;
      p += sign;
      first[i] = Digits.word(text, p) ^ w.like;
      then[i] = Digits.word(text, p + Writing.WORD) ^ w.likeThen;
      minus[i] = -sign;
      cells[i] = p + w.length + 1;
    }
  }

  /** Makes numbers of the words, and finds what is written otherwise. */
  private void read(Writing w, int count) {
    check(w, count);
    number(w, count);
    if (w.secondDigits != 0) {
      addDigits(w, count);
    }
    if (w.exponent) {
      scale(w, count);
    }
  }

  private void check(Writing w, int count) {
    for (int i = 0; i < count; i++) {
      long f = (first[i] + w.carry | first[i]) & w.wrong;
      long t = (then[i] + w.carryThen | then[i]) & w.wrongThen;
      wrong[i] = f | t;
    }
  }

  private void number(Writing w, int count) {
    for (int i = 0; i < count; i++) {
      long digits = (first[i] & w.whole) << 8 | first[i] & w.after;
      first[i] = Digits.eight(digits << w.first);
    }
  }

  private void addDigits(Writing w, int count) {
    for (int i = 0; i < count; i++) {
      first[i] = first[i] * w.factor + Digits.eight((then[i] & w.secondDigits) << w.second);
    }
  }

  private void scale(Writing w, int count) {
    long least = w.least;
    for (int i = 0; i < count; i++) {
      long factor = w.factors[Writing.code(text, cells[i])];
      first[i] *= factor;
      wrong[i] |= factor - 1 & Long.MIN_VALUE;
      least = Math.min(least, factor);
    }
    w.least = least;
  }

  private int firstWrong(int count) {
    long any = 0;
    for (int i = 0; i < count; i++) {
      any |= wrong[i];
    }
    int i = any == 0 ? count : 0;
    while (i < count && wrong[i] == 0) {
      i++;
    }
    return i;
  }

  /**
   * Told of a row that was written otherwise, or to a lower power than those before in its block.
   *
   * @param start first byte of a row of numbers
   * @param row where they went in the blocks
   */
  void missed(int start, int row) {
    if (rest > 0) {
      rest--;
      return;
    }
    if (learned && lower(row)) {
      return;
    }
    misses++;
    if (!learned || misses >= LEARN_AFTER) {
      learned = learn(start);
      if (learned) {
        lower(row);
      }
    }
    if (misses > GIVE_UP_AFTER || !learned) {
      rest = REST_ROWS;
      misses = 0;
      learned = false;
    }
  }

  /** Brings the last row of a block and those before it to one power; false where they had it. */
  private boolean lower(int row) {
    boolean any = false;
    for (int c = 0; c < writings.length; c++) {
      Writing w = writings[c];
      int power = blocks[c].power(row);
      if (!w.exponent || power > HIGHEST_POWER) {
        continue;
      }
      if (power > w.power) {
        blocks[c].lower(row + 1, power, w.power);
      } else if (power < w.power && blocks[c].lower(row, w.power, power)) {
        w.bringTo(power);
        any = true;
      }
    }
    return any;
  }

  private boolean learn(int start) {
    shortest = writings.length;
    int p = start;
    for (int c = 0; c < writings.length; c++) {
      p += text[p] == '-' ? 1 : 0;
      writings[c] = new Writing(text, p, decimalMark);
      p += writings[c].length;
      shortest += writings[c].length;
      boolean last = c == writings.length - 1;
      boolean ends = last ? text[p] == '\n' || text[p] == '\r' : text[p] == delimiter;
      if (!writings[c].usable || !ends) {
        return false;
      }
      p++;
    }
    length = shortest;
    return true;
  }
}
