package toothmark.capture.store;

import java.io.IOException;

/**
 * Fills a column with numbers from a file that holds them in binary form.
 *
 * <p>Not a number reads as a missing cell, an infinity as beyond the recorder's range, and negative
 * zero as zero.
 */
public final class ColumnWriter {

  private static final int BLOCK = 8192;

  private final BlockPacker packer = new BlockPacker();
  private final NumberBlock block = new NumberBlock(BLOCK);
  private final StoredColumn column;
  private int used;

  /**
   * Fills a column.
   *
   * @param column to fill; complete after {@link #finish}
   */
  public ColumnWriter(StoredColumn column) {
    this.column = column;
  }

  /**
   * Appends a number.
   *
   * @param value any
   * @throws IOException if the temporary file cannot be written
   */
  public void add(double value) throws IOException {
    if (used == BLOCK) {
      finish();
    }
    long whole = (long) value;
    if (whole == value && Math.abs(whole) <= PowersOfTen.EXACT_INTEGER) {
      block.set(used++, whole, (byte) 0);
    } else if (Double.isFinite(value)) {
      block.set(used++, Double.doubleToRawLongBits(value), NumberBlock.BITS);
    } else {
      block.set(used++, 0, mark(value));
    }
  }

  private static byte mark(double value) {
    if (Double.isNaN(value)) {
      return NumberBlock.MISSING;
    }
    return value > 0 ? NumberBlock.ABOVE_RANGE : NumberBlock.BELOW_RANGE;
  }

  /**
   * Hands over what is left.
   *
   * @return the column
   * @throws IOException if the temporary file cannot be written
   */
  public StoredColumn finish() throws IOException {
    column.append(packer.pack(block, used, 0));
    used = 0;
    return column;
  }
}
