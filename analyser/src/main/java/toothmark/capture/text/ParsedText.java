package toothmark.capture.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import toothmark.capture.store.PackedBlock;

/** What a parser found in one block of text, in the order of the text. */
final class ParsedText {

  /**
   * A line that is neither a row nor anything known.
   *
   * @param line counted in the block, from 0
   * @param row how many rows stand before it in the block
   * @param message what is wrong
   */
  record OddLine(int line, int row, String message) {}

  private final List<PackedBlock[]> chunks = new ArrayList<>();
  private final List<OddLine> oddLines = new ArrayList<>();
  private int[] segmentRows = new int[4];
  private int segments;
  private int[] skippedAt = new int[4];
  private int skipped;
  int rows;
  int lines;
  int brokenRows;
  int firstBrokenLine;
  String tornLine = "";

  void clear() {
    chunks.clear();
    oddLines.clear();
    segments = 0;
    skipped = 0;
    rows = 0;
    lines = 0;
    brokenRows = 0;
    tornLine = "";
  }

  /** One packed block for each stored column. */
  void addChunk(PackedBlock[] columns) {
    chunks.add(columns);
  }

  List<PackedBlock[]> chunks() {
    return chunks;
  }

  void addOdd(OddLine line) {
    oddLines.add(line);
  }

  List<OddLine> oddLines() {
    return oddLines;
  }

  /** A new segment begins with the next row. */
  void startSegment() {
    if (segments == segmentRows.length) {
      segmentRows = Arrays.copyOf(segmentRows, 2 * segments);
    }
    segmentRows[segments++] = rows;
  }

  /** How many rows of the block stand before each start of a segment. */
  int[] segmentRows() {
    return Arrays.copyOf(segmentRows, segments);
  }

  /** A line that is no row. */
  void skipLine() {
    if (skipped == skippedAt.length) {
      skippedAt = Arrays.copyOf(skippedAt, 2 * skipped);
    }
    skippedAt[skipped++] = rows;
  }

  /** How many lines were no row. */
  int skippedLines() {
    return skipped;
  }

  /** How many rows of the block stand before a line that is no row. */
  int rowsBefore(int skippedLine) {
    return skippedAt[skippedLine];
  }

  void breakRow() {
    if (brokenRows++ == 0) {
      firstBrokenLine = lines;
    }
  }
}
