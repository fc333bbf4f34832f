package toothmark.capture.text;

/**
 * The steady clock behind a column of times, in pieces: runs of rows without a jump.
 *
 * @param intervalSeconds time between rows of a piece
 * @param pieces where each piece starts
 * @param worstSeconds largest distance of a row's time from the clock
 * @param roundedToSeconds step in which the times were written
 * @param snapped whether the interval is the round number nearest to the fit
 */
record Clock(
    double intervalSeconds,
    Pieces pieces,
    double worstSeconds,
    double roundedToSeconds,
    boolean snapped) {

  /** First row and time of each piece. */
  static final class Pieces {
    final LongList firsts = new LongList();
    final DoubleList times = new DoubleList();

    int size() {
      return firsts.size();
    }
  }
}
