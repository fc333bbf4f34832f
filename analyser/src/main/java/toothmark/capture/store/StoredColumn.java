package toothmark.capture.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * One column of numbers, appended block by block and then read from anywhere, any number of times,
 * by any number of threads.
 *
 * <p>Where a cell held no number the column reads as the straight line between its neighbours;
 * where the recorder said that it was over its range, as the highest (or lowest) number of the
 * column. {@link #marked} tells how many.
 */
public final class StoredColumn {

  private static final int CHUNK = 8192;
  private static final ByteBuffer NOTHING = ByteBuffer.allocate(0);

  private final SampleStore store;
  private PackedBlock[] blocks = new PackedBlock[16];
  private long[] firsts = new long[16];
  private int size;
  private long count;
  private double lowest = Double.POSITIVE_INFINITY;
  private double highest = Double.NEGATIVE_INFINITY;
  private final Levels levels = new Levels();
  private final Gaps gaps = new Gaps();

  StoredColumn(SampleStore store) {
    this.store = store;
  }

  /**
   * Appends a block.
   *
   * @param block what a packer made; not used again by the caller
   * @throws IOException if the temporary file cannot be written
   */
  public void append(PackedBlock block) throws IOException {
    if (block.count == 0) {
      return;
    }
    if (size == blocks.length) {
      blocks = Arrays.copyOf(blocks, 2 * size);
      firsts = Arrays.copyOf(firsts, 2 * size);
    }
    for (int r = 0; r < block.marks.length; r += 3) {
      gaps.add(count + block.marks[r], count + block.marks[r + 1], (byte) block.marks[r + 2]);
    }
    store.keep(block);
    blocks[size] = block;
    firsts[size++] = count;
    count += block.count;
    lowest = Math.min(lowest, block.lowest);
    highest = Math.max(highest, block.highest);
    levels.add(block);
  }

  /**
   * How many cells were appended.
   *
   * @return 0 or more
   */
  public long count() {
    return count;
  }

  /**
   * The lowest number.
   *
   * @return positive infinity when there is none
   */
  public double lowest() {
    return lowest;
  }

  /**
   * The highest number.
   *
   * @return negative infinity when there is none
   */
  public double highest() {
    return highest;
  }

  /**
   * Whether no more than two different numbers occur.
   *
   * @return true for a logic level
   */
  public boolean isTwoLevel() {
    return levels.atMostTwo();
  }

  /**
   * How many cells carry a mark.
   *
   * @param mark one of the marks of {@link NumberBlock}
   * @return 0 or more
   */
  public long marked(byte mark) {
    return gaps.cells(mark);
  }

  /**
   * Whether a cell held a number.
   *
   * @param index from 0
   * @return false where it is marked
   */
  public boolean isNumber(long index) {
    return !gaps.holds(index);
  }

  /**
   * How many cells at the end hold no number.
   *
   * @return 0 or more
   */
  public long missingAtEnd() {
    return gaps.missingAtEnd(count);
  }

  /**
   * How many separate runs of marked cells there are.
   *
   * @return 0 or more
   */
  public int runsOfMarks() {
    return gaps.size();
  }

  /**
   * Step in which the numbers were written: the finest power of ten of any cell.
   *
   * @return in the unit of the memory; 0 when some have more digits than a double holds
   */
  public double writtenStep() {
    int finest = Byte.MAX_VALUE;
    for (int i = 0; i < size; i++) {
      finest = Math.min(finest, blocks[i].finest);
    }
    boolean exact = Math.abs(finest) <= PowersOfTen.EXACT_DOUBLE;
    return exact ? PowersOfTen.scale(1, finest) : 0;
  }

  /**
   * How far the numbers lie on a straight line, to one written step, as far as the packing shows.
   *
   * @param index where the line starts, from 0
   * @return index after its last number; index + 1 when no line is known
   */
  public long lineEnd(long index) {
    int b = blockOf(index);
    return isLine(blocks[b]) ? firsts[b] + blocks[b].count : index + 1;
  }

  private static boolean isLine(PackedBlock block) {
    boolean line = block.element == PackedBlock.Element.INTEGER && block.width == 0;
    return line && block.marks.length == 0;
  }

  /**
   * Reads one number.
   *
   * @param index from 0
   * @return the number
   */
  public double at(long index) {
    double[] one = new double[1];
    read(index, one, 0, 1);
    return one[0];
  }

  /**
   * Reads a run of numbers.
   *
   * @param first index of the first, from 0
   * @param into where to put them
   * @param offset where in it
   * @param length how many; first + length must not pass {@link #count()}
   */
  public void read(long first, double[] into, int offset, int length) {
    if (first < 0 || length < 0 || first + length > count) {
      throw new IndexOutOfBoundsException(
          "samples " + first + " to " + (first + length) + " of " + count);
    }
    int b = length == 1 ? blockOf(first) : 0;
    if (length == 1 && isLine(blocks[b])) {
      long integer = blocks[b].base + PackedBlock.line(blocks[b].step, first - firsts[b]);
      into[offset] = PowersOfTen.scale(integer, blocks[b].power);
      return;
    }
    Run run = new Run(into, offset, first, length);
    raw(run);
    gaps.mend(this, run);
  }

  /** Reads without mending. */
  void raw(Run run) {
    int done = 0;
    int b = blockOf(run.first());
    while (done < run.length()) {
      PackedBlock block = blocks[b];
      int from = (int) (run.first() + done - firsts[b]);
      int n = Math.min(Math.min(run.length() - done, block.count - from), CHUNK);
      Run part = new Run(run.into(), run.offset() + done, run.first() + done, n);
      Unpacker.unpack(block, from, bytes(block, from, n), part);
      done += n;
      if (from + n == block.count) {
        b++;
      }
    }
  }

  private int blockOf(long index) {
    int k = Arrays.binarySearch(firsts, 0, size, index);
    return k < 0 ? -k - 2 : k;
  }

  /** The packed bytes of some elements, from the buffer's position on. */
  private ByteBuffer bytes(PackedBlock block, int from, int n) {
    byte[] payload = block.payload;
    if (block.width == 0) {
      return NOTHING;
    }
    int start = from * block.width;
    if (payload != null) {
      return ByteBuffer.wrap(payload, start, n * block.width).order(ByteOrder.LITTLE_ENDIAN);
    }
    ByteBuffer scratch = ByteBuffer.allocate(n * block.width).order(ByteOrder.LITTLE_ENDIAN);
    store.fetch(block.position + start, scratch);
    return scratch.flip();
  }
}
