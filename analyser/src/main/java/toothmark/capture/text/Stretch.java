package toothmark.capture.text;

/**
 * Rows of one segment and the ticks of the steady clock that they fill.
 *
 * @param firstRow of the table
 * @param endRow the row after the last
 * @param writtenStart time of the first tick as the file has it, s
 * @param start time of the first tick in the capture, s
 * @param ticks how many
 */
record Stretch(long firstRow, long endRow, double writtenStart, double start, long ticks) {}
