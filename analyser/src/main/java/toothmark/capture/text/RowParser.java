package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.Arrays;
import toothmark.capture.store.BlockPacker;
import toothmark.capture.store.NumberBlock;
import toothmark.capture.store.PackedBlock;

/** Turns whole lines of text into packed columns. Each thread needs its own. */
final class RowParser {

  private static final int CELLS_IN_A_CHUNK = 1 << 17;
  private static final int MOST_ODD_LINES = 100;
  private static final int ROWS_TO_KNOW_DECIMALS = 8;
  private static final int ODD_ROW = -1;
  private static final int SHORT_ROW = -2;
  private static final int LONG_ROW = -3;

  private final TextInput input;
  private final Layout layout;
  private final Numbers numbers;
  private final SteadyRow steady;
  private final ColumnKind[] kinds;
  private final int[] shifts;
  private final NumberBlock[] blocks;
  private final BlockPacker packer = new BlockPacker();
  private final int capacity;
  private final byte delimiter;
  private final boolean blanks;
  private byte[] text;
  private int row;
  private int oddColumn;
  private int oddStart;
  private int rowEnd;
  private ParsedText out;

  RowParser(TextInput input, Layout layout) {
    this.input = input;
    this.layout = layout;
    numbers = new Numbers(layout.dialect());
    delimiter = (byte) layout.dialect().delimiter();
    blanks = layout.dialect().delimiter() == Dialect.BLANKS;
    int width = layout.columns().size();
    kinds = new ColumnKind[width];
    shifts = new int[width];
    blocks = new NumberBlock[width];
    capacity = Math.max(64, Math.min(CELLS_IN_A_CHUNK / width, 1 << 14));
    for (int c = 0; c < width; c++) {
      ColumnPlan plan = layout.columns().get(c);
      kinds[c] = plan.isStored() ? plan.kind() : ColumnKind.TEXT;
      shifts[c] = plan.shift();
      blocks[c] = plan.isStored() ? new NumberBlock(capacity) : null;
    }
    boolean allNumbers = Arrays.stream(kinds).allMatch(ColumnKind.NUMBER::equals);
    steady = new SteadyRow(layout.dialect(), blocks, allNumbers);
  }

  /**
   * Parses whole lines.
   *
   * @param bytes the text; {@link Numbers#PADDING} bytes must follow it in the array
   * @param from first byte of the first line
   * @param to after the last line end, or after the last byte of the file
   * @param isLast whether the file ends here
   * @param result where to put what is found
   */
  void parse(byte[] bytes, int from, int to, boolean isLast, ParsedText result) {
    text = bytes;
    numbers.from(bytes);
    steady.from(bytes);
    out = result;
    out.clear();
    row = 0;
    boolean cut = isLast && to > from && bytes[to - 1] != '\n' && bytes[to - 1] != '\r';
    if (cut) {
      bytes[to] = '\n';
      steady.giveUp(); // how each number was written tells whether the last line is whole
    }
    int p = from;
    while (p < to) {
      p = steady.read(p, to, row, capacity);
      row += steady.rows();
      out.rows += steady.rows();
      out.lines += steady.rows();
      if (row == capacity && p < to) {
        pack();
      } else if (p < to) {
        p = line(p);
      }
    }
    if (cut) {
      checkTorn(to);
    }
    pack();
  }

  /** Parses one line; gives the start of the next. */
  private int line(int start) {
    int end = skipBlanks(start);
    if (text[end] == '\n' || text[end] == '\r') {
      out.skipLine();
    } else {
      end = cells(start);
      if (end >= 0) {
        steady.missed(start, row);
        row++;
        out.rows++;
      } else {
        rowEnd = lineEnd(start);
        notARow(start, end);
        end = rowEnd;
      }
    }
    out.lines++;
    return text[end] == '\r' && text[end + 1] == '\n' ? end + 2 : end + 1;
  }

  /** Parses the cells of a line; gives its end, or why it is no row. */
  private int cells(int start) {
    int p = start;
    int last = kinds.length - 1;
    for (int c = 0; ; c++) {
      if (blanks) {
        p = skipBlanks(p);
      }
      oddStart = p;
      int end =
          kinds[c] == ColumnKind.NUMBER
              ? numbers.read(p, shifts[c], blocks[c], row)
              : Numbers.NOT_PLAIN;
      p = end >= 0 ? end : cell(p, c);
      if (p < 0) {
        oddColumn = c;
        return ODD_ROW;
      }
      if (blanks) {
        p = skipBlanks(p);
      }
      byte t = text[p];
      boolean atEnd = t == '\n' || t == '\r';
      if (c == last) {
        return atEnd ? p : trailing(p);
      }
      if (atEnd) {
        return SHORT_ROW;
      }
      p += blanks ? 0 : 1;
    }
  }

  private int skipBlanks(int from) {
    int p = from;
    while (text[p] == ' ' || text[p] == '\t') {
      p++;
    }
    return p;
  }

  /** A row may end in one delimiter more. */
  private int trailing(int p) {
    int q = p + 1;
    while (text[q] == ' ') {
      q++;
    }
    return text[p] == delimiter && (text[q] == '\n' || text[q] == '\r') ? q : LONG_ROW;
  }

  private int lineEnd(int start) {
    int p = start;
    while (text[p] != '\n' && text[p] != '\r') {
      p++;
    }
    return p;
  }

  /** A cell that is no plain number: gives its end, or -1 when it makes no sense. */
  private int cell(int start, int c) {
    int end = cellEnd(start);
    if (kinds[c] == ColumnKind.TEXT || kinds[c] == ColumnKind.EMPTY) {
      return end;
    }
    if (end == start) {
      blocks[c].set(row, 0, NumberBlock.MISSING);
      return end;
    }
    String cell = unquoted(input.decode(text, start, end));
    boolean understood =
        switch (kinds[c]) {
          case HEX -> set(c, HexText.value(cell));
          case BINARY -> set(c, HexText.binary(cell));
          case WORD -> set(c, Words.level(cell));
          default -> set(c, Cell.of(cell, layout.dialect().decimalMark()));
        };
    return understood ? end : ODD_ROW;
  }

  private int cellEnd(int start) {
    int p = start;
    while (text[p] <= ' ' && !numbers.endsCell(text[p])) {
      p++;
    }
    if (text[p] == '"') {
      p++;
      while (text[p] != '"' && text[p] != '\n' && text[p] != '\r') {
        p++;
      }
    }
    while (!numbers.endsCell(text[p])) {
      p++;
    }
    return p;
  }

  private static String unquoted(String cell) {
    String t = cell.strip();
    boolean quoted = t.length() > 1 && t.charAt(0) == '"' && t.charAt(t.length() - 1) == '"';
    return quoted ? t.substring(1, t.length() - 1) : t;
  }

  private boolean set(int c, long value) {
    if (value >= 0) {
      blocks[c].set(row, value, (byte) 0);
    }
    return value >= 0;
  }

  private boolean set(int c, Cell cell) {
    NumberBlock block = blocks[c];
    switch (cell.kind()) {
      case NUMBER, CLOCK -> {
        boolean clock = cell.kind() == Cell.Kind.CLOCK;
        if (clock != (kinds[c] == ColumnKind.CLOCK)) {
          return false;
        }
        boolean own = !cell.unit().isNone();
        setNumber(block, own ? cell.number().scaleByPowerOfTen(-shifts[c]) : cell.number(), c);
      }
      case EMPTY, MISSING -> block.set(row, 0, NumberBlock.MISSING);
      case ABOVE_RANGE -> block.set(row, 0, NumberBlock.ABOVE_RANGE);
      case BELOW_RANGE -> block.set(row, 0, NumberBlock.BELOW_RANGE);
      case TEXT -> {
        return false;
      }
    }
    return true;
  }

  private void setNumber(NumberBlock block, BigDecimal number, int c) {
    boolean small = number.unscaledValue().bitLength() < 63 && Math.abs(number.scale()) < 100;
    if (small) {
      block.set(row, number.unscaledValue().longValue(), (byte) -number.scale());
    } else {
      double value = number.scaleByPowerOfTen(shifts[c]).doubleValue();
      block.set(row, Double.doubleToRawLongBits(value), NumberBlock.BITS);
    }
  }

  /** A line that is no row: blank, a comment, a start of a segment, broken, or an error. */
  private void notARow(int start, int why) {
    String line = input.decode(text, start, rowEnd);
    boolean known = isEmpty(line) || isSegmentStart(line) || Header.isComment(line);
    if (why != ODD_ROW && !known) {
      breakRow();
      return;
    }
    out.skipLine();
    if (isEmpty(line)) {
      return;
    }
    if (isSegmentStart(line)) {
      out.startSegment();
    } else if (!Header.isComment(line)) {
      odd();
    }
  }

  private boolean isSegmentStart(String line) {
    return layout.header().lines().contains(line) || Words.announcesSegment(line);
  }

  private boolean isEmpty(String line) {
    for (int i = 0; i < line.length(); i++) {
      if (line.charAt(i) > ' ' && line.charAt(i) != layout.dialect().delimiter()) {
        return false;
      }
    }
    return true;
  }

  private void odd() {
    if (out.oddLines().size() >= MOST_ODD_LINES) {
      return;
    }
    String cell = input.decode(text, oddStart, Math.max(oddStart, cellEnd(oddStart))).strip();
    String shown = cell.length() > 40 ? cell.substring(0, 40) + "…" : cell;
    out.addOdd(
        new ParsedText.OddLine(
            out.lines,
            out.rows,
            "column " + (oddColumn + 1) + ": '" + shown + "' is no " + expected(oddColumn)));
  }

  private String expected(int column) {
    return switch (kinds[column]) {
      case CLOCK -> "time of day";
      case HEX -> "hexadecimal word";
      case BINARY -> "binary word";
      case WORD -> "level";
      default -> "number";
    };
  }

  /** Keeps the place of a row that cannot be trusted. */
  private void breakRow() {
    for (NumberBlock block : blocks) {
      if (block != null) {
        block.set(row, 0, NumberBlock.MISSING);
      }
    }
    out.breakRow();
    row++;
    out.rows++;
  }

  /**
   * Drops the last line of a file where the writer was stopped within it: a line without an end
   * that is no whole row, or whose last number has fewer decimals than all those before.
   */
  private void checkTorn(int to) {
    int start = to;
    while (start > 0 && text[start - 1] != '\n' && text[start - 1] != '\r') {
      start--;
    }
    int odd = out.oddLines().size() - 1;
    boolean oddLast = odd >= 0 && out.oddLines().get(odd).line() == out.lines - 1;
    boolean brokenLast = out.brokenRows > 0 && row > 0 && isMarked(row - 1);
    if (oddLast) {
      out.oddLines().remove(odd);
    } else if (brokenLast) {
      out.brokenRows--;
      dropRow();
    } else if (lastCellIsMissing() || row >= ROWS_TO_KNOW_DECIMALS && hasFewerDecimals()) {
      dropRow();
    } else {
      return;
    }
    out.tornLine = input.decode(text, start, to);
  }

  private void dropRow() {
    row--;
    out.rows--;
  }

  private boolean isMarked(int r) {
    for (NumberBlock block : blocks) {
      if (block != null && block.power(r) != NumberBlock.MISSING) {
        return false;
      }
    }
    return true;
  }

  private boolean lastCellIsMissing() {
    NumberBlock block = blocks[blocks.length - 1];
    return row > 1
        && block != null
        && block.power(row - 1) == NumberBlock.MISSING
        && block.power(row - 2) != NumberBlock.MISSING;
  }

  private boolean hasFewerDecimals() {
    int c = kinds.length - 1;
    if (kinds[c] != ColumnKind.NUMBER || blocks[c] == null) {
      return false;
    }
    byte before = blocks[c].power(0);
    for (int r = 1; r < row - 1; r++) {
      if (blocks[c].power(r) != before) {
        return false;
      }
    }
    return blocks[c].power(row - 1) > before && blocks[c].power(row - 1) <= 0;
  }

  private void pack() {
    if (row == 0) {
      return;
    }
    PackedBlock[] packed = new PackedBlock[blocks.length];
    for (int c = 0; c < blocks.length; c++) {
      packed[c] = blocks[c] == null ? null : packer.pack(blocks[c], row, shifts[c]);
    }
    out.addChunk(packed);
    row = 0;
    steady.newBlock();
  }
}
