package toothmark.capture.text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.PackedBlock;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;

/** All rows of a text file, in columns. Filled by a {@link BlockPipeline}. */
final class Table implements BlockPipeline.Taker {

  private static final int BROKEN_ROWS_ALWAYS_BORNE = 3;
  private static final int ROWS_FOR_A_BROKEN_ONE = 200;
  private static final int MOST_SKIPPED = 1 << 20;
  private static final int MOST_RUNS_OF_MARKS = 1 << 20;

  private final String file;
  private final Layout layout;
  private final StoredColumn[] columns;
  private final String rowWord;
  private long rows;
  private long lines;
  private long[] segmentRows = {0};
  private int segments = 1;
  private long brokenRows;
  private long firstBrokenLine;
  private String tornLine = "";
  private final LongList skippedAt = new LongList();
  private final List<String> trailing = new ArrayList<>();

  /** A table that a text fills. */
  Table(String file, Layout layout, SampleStore store) {
    this.file = file;
    this.layout = layout;
    this.rowWord = "line ";
    this.columns = new StoredColumn[layout.columns().size()];
    for (int c = 0; c < columns.length; c++) {
      columns[c] = layout.columns().get(c).isStored() ? store.newColumn() : null;
    }
  }

  /** A table of columns that are filled already, all to one length. */
  Table(String file, Layout layout, List<StoredColumn> columns) {
    this.file = file;
    this.layout = layout;
    this.rowWord = "row ";
    this.columns = columns.toArray(StoredColumn[]::new);
    this.rows = columns.get(0).count();
  }

  @Override
  public void take(ParsedText parsed) throws IOException, UnreadableCaptureException {
    int before = 0;
    for (ParsedText.OddLine odd : parsed.oddLines()) {
      checkTrailing(odd.row() > before);
      before = odd.row();
      trailing.add("line " + (layout.firstRow() + lines + odd.line()) + ", " + odd.message());
    }
    checkTrailing(parsed.rows > before);
    for (int row : parsed.segmentRows()) {
      startSegment(rows + row);
    }
    for (int i = 0; i < parsed.skippedLines() && skippedAt.size() < MOST_SKIPPED; i++) {
      skippedAt.add(rows + parsed.rowsBefore(i));
    }
    if (parsed.brokenRows > 0) {
      firstBrokenLine =
          brokenRows == 0 ? layout.firstRow() + lines + parsed.firstBrokenLine : firstBrokenLine;
      brokenRows += parsed.brokenRows;
    }
    for (PackedBlock[] chunk : parsed.chunks()) {
      append(chunk);
    }
    tornLine = parsed.tornLine;
    rows += parsed.rows;
    lines += parsed.lines;
  }

  /** Text behind the last row is left out; the same text between rows is an error. */
  private void checkTrailing(boolean rowsFollow) throws UnreadableCaptureException {
    if (rowsFollow && !trailing.isEmpty()) {
      throw new UnreadableCaptureException(
          file + ": " + trailing.get(0) + "; mend or remove the line");
    }
  }

  private void startSegment(long row) {
    if (row == segmentRows[segments - 1]) {
      return;
    }
    if (segments == segmentRows.length) {
      segmentRows = Arrays.copyOf(segmentRows, 2 * segments);
    }
    segmentRows[segments++] = row;
  }

  private void append(PackedBlock[] chunk) throws IOException, UnreadableCaptureException {
    for (int c = 0; c < columns.length; c++) {
      if (columns[c] != null) {
        columns[c].append(chunk[c]);
        if (columns[c].runsOfMarks() > MOST_RUNS_OF_MARKS) {
          throw new UnreadableCaptureException(
              file
                  + ": column "
                  + (c + 1)
                  + ": more than a million separate cells hold no number; remove the column");
        }
      }
    }
  }

  /** Checks the whole once everything is read. */
  void complete() throws UnreadableCaptureException {
    if (rows == 0) {
      throw new UnreadableCaptureException(
          file + ": line " + layout.firstRow() + ": the only row is cut short; record again");
    }
    if (brokenRows > BROKEN_ROWS_ALWAYS_BORNE && brokenRows > rows / ROWS_FOR_A_BROKEN_ONE) {
      throw new UnreadableCaptureException(
          file
              + ": line "
              + firstBrokenLine
              + ": not "
              + columns.length
              + " cells as in the rows before, and "
              + (brokenRows - 1)
              + " more rows like it; mend them or state the delimiter");
    }
  }

  /** What had to be mended, one sentence each. */
  List<String> doubts() {
    List<String> doubts = new ArrayList<>();
    if (brokenRows > 0) {
      doubts.add(
          brokenRows
              + (brokenRows == 1 ? " row has" : " rows have")
              + " not "
              + columns.length
              + " cells, first in line "
              + firstBrokenLine
              + "; filled from the neighbours");
    }
    if (!tornLine.isEmpty()) {
      doubts.add("the last line is cut short ('" + tornLine + "') and was left out");
    }
    if (!trailing.isEmpty()) {
      doubts.add("the text behind the last row was left out (" + trailing.get(0) + ")");
    }
    return doubts;
  }

  Layout layout() {
    return layout;
  }

  String file() {
    return file;
  }

  long rows() {
    return rows;
  }

  /** Line of a row, from 1. */
  long line(long row) {
    int before = 0;
    int end = skippedAt.size();
    while (before < end) {
      int middle = (before + end) >>> 1;
      if (skippedAt.get(middle) <= row) {
        before = middle + 1;
      } else {
        end = middle;
      }
    }
    return layout.firstRow() + row + before;
  }

  /** Where a row stands, for messages. */
  String place(long row) {
    return rowWord + line(row);
  }

  /** A column that is stored. */
  StoredColumn column(int index) {
    return columns[index];
  }

  /** First rows of the segments that the file itself announces; the first is 0. */
  long[] segmentRows() {
    int n = segments > 1 && segmentRows[segments - 1] == rows ? segments - 1 : segments;
    return Arrays.copyOf(segmentRows, n);
  }
}
