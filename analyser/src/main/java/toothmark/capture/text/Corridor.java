package toothmark.capture.text;

/** The straight lines from one row that pass all rows since within a tolerance. */
final class Corridor {

  private final double tolerance;
  private final double typicalStep;
  private long anchorRow;
  private double anchorTime;
  private double lowest;
  private double highest;

  /**
   * Makes a corridor.
   *
   * @param tolerance how far a row may be off the line, s
   * @param typicalStep expected time between rows, s
   */
  Corridor(double tolerance, double typicalStep) {
    this.tolerance = tolerance;
    this.typicalStep = typicalStep;
  }

  void begin(long row, double time) {
    anchorRow = row;
    anchorTime = time;
    boolean coarse = tolerance > typicalStep;
    lowest = coarse ? 0 : typicalStep / 2;
    highest = coarse ? Double.POSITIVE_INFINITY : 2 * typicalStep;
  }

  /** Narrows the corridor by a row; false, and nothing changes, when the row lies outside. */
  boolean take(long row, double time) {
    double distance = row - anchorRow;
    double low = Math.max(lowest, (time - tolerance - anchorTime) / distance);
    double high = Math.min(highest, (time + tolerance - anchorTime) / distance);
    if (low > high) {
      return false;
    }
    lowest = low;
    highest = high;
    return true;
  }

  /** Whether a row lies well inside, so that it narrows nothing much. */
  boolean passes(long row, double time) {
    return Math.abs(time - anchorTime - (row - anchorRow) * middle()) <= tolerance / 2;
  }

  boolean passesAll(long row, double[] chunk, int n) {
    double slope = middle();
    double start = anchorTime + (row - anchorRow) * slope;
    double worst = 0;
    for (int i = 0; i < n; i++) {
      double d = Math.abs(chunk[i] - (start + i * slope));
      worst = d > worst ? d : worst;
    }
    return worst <= tolerance / 2;
  }

  private double middle() {
    return highest == Double.POSITIVE_INFINITY ? typicalStep : (lowest + highest) / 2;
  }
}
