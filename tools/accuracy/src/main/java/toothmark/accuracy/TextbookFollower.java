package toothmark.accuracy;

/**
 * A controller's textbook way of following a wheel with one gap, written anew from its description:
 * the analyser's own is not used, so that the two can be compared.
 *
 * <p>With r the ratio of an interval to the one before and M the missing teeth, r above 1 + M/2 is
 * a gap. Searching, a gap makes its edge tooth 1. Following, a gap is right only after the last
 * tooth, and no gap only before it; anything else is a loss, and it searches from the next edge on.
 */
public final class TextbookFollower {

  private final int[] teeth;
  private int losses;

  /**
   * Follows a wheel.
   *
   * @param edges times in order, s
   * @param slots places of the wheel
   * @param missing teeth missing in a row
   */
  public TextbookFollower(double[] edges, int slots, int missing) {
    teeth = new int[edges.length];
    int tooth = 0;
    for (int i = 2; i < edges.length; i++) {
      double before = edges[i - 1] - edges[i - 2];
      boolean gap = before > 0 && (edges[i] - edges[i - 1]) / before > 1.0 + 0.5 * missing;
      if (tooth == 0) {
        tooth = gap ? 1 : 0;
      } else if (gap == (tooth == slots - missing)) {
        tooth = gap ? 1 : tooth + 1;
      } else {
        tooth = 0;
        losses++;
      }
      teeth[i] = tooth;
    }
  }

  /**
   * What it takes an edge for.
   *
   * @param edge its index
   * @return number of a tooth from 1; 0 while it searches
   */
  public int tooth(int edge) {
    return teeth[edge];
  }

  /**
   * How often it lost its count.
   *
   * @return number of losses
   */
  public int losses() {
    return losses;
  }
}
