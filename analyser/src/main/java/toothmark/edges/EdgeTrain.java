package toothmark.edges;

/**
 * Edges of one direction in time order.
 *
 * <p>Strength is 1 for an edge like its neighbours. For a variable-reluctance wave it is the
 * prominence of its extremum of flux (the swing that must be overlooked for the edge to vanish)
 * over the usual swing around, and never more than that over six times what noise alone makes of
 * it. For a logic signal it is the shorter of the two pulses beside the edge over the rolling
 * median of pulses of that level, flicker left out; for the edges of a flicker its own width over
 * that median, which is below 0.15. All are capped at 1. Level is the flux at the edge in units of
 * the local swing, on a scale on which a typical maximum is 1 and a typical minimum 0; it is 0 or 1
 * for logic. Swing is the mean of the two flux swings beside the edge, in the channel's unit times
 * seconds; it does not depend on speed; 0 for logic. Width is how long the flux of a wave stays
 * within half of the smaller swing beside the edge: of teeth alike it shows the local pace,
 * whatever lies between them; 0 where it is not known, and for logic.
 *
 * <p>A record may hold a million edges, so strength, level, swing and width are kept in single
 * precision.
 */
public final class EdgeTrain {

  private final double[] times;
  private final double[] uncertainties;
  private final float[] strengths;
  private final float[] levels;
  private final float[] swings;
  private final float[] widths;

  /**
   * Builds a train of a signal without flux; the arrays are copied.
   *
   * @param times s, strictly rising
   * @param uncertainties standard uncertainty of each time, s
   * @param strengths see the class comment
   * @param levels see the class comment
   */
  public EdgeTrain(double[] times, double[] uncertainties, double[] strengths, double[] levels) {
    this(times, uncertainties, strengths, levels, new double[times.length]);
  }

  /**
   * Builds a train; the arrays are copied.
   *
   * @param times s, strictly rising
   * @param uncertainties standard uncertainty of each time, s
   * @param strengths see the class comment
   * @param levels see the class comment
   * @param swings see the class comment
   */
  public EdgeTrain(
      double[] times,
      double[] uncertainties,
      double[] strengths,
      double[] levels,
      double[] swings) {
    if (uncertainties.length != times.length
        || strengths.length != times.length
        || levels.length != times.length
        || swings.length != times.length) {
      throw new IllegalArgumentException("an edge train needs five arrays of one length");
    }
    this.times = times.clone();
    this.uncertainties = uncertainties.clone();
    this.strengths = singles(strengths);
    this.levels = singles(levels);
    this.swings = singles(swings);
    this.widths = new float[times.length];
  }

  /** Takes over what a list holds. */
  EdgeTrain(EdgeList list) {
    times = list.times();
    uncertainties = list.uncertainties();
    strengths = list.strengths();
    levels = list.levels();
    swings = list.swings();
    widths = list.widths();
  }

  private static float[] singles(double[] values) {
    float[] singles = new float[values.length];
    for (int i = 0; i < singles.length; i++) {
      singles[i] = (float) values[i];
    }
    return singles;
  }

  /**
   * How many edges there are.
   *
   * @return 0 or more
   */
  public int size() {
    return times.length;
  }

  /**
   * Time of an edge.
   *
   * @param index from 0
   * @return s
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * Standard uncertainty of an edge's time.
   *
   * @param index from 0
   * @return s
   */
  public double uncertainty(int index) {
    return uncertainties[index];
  }

  /**
   * How strong an edge is.
   *
   * @param index from 0
   * @return 1 for an edge like its neighbours, near 0 for a flicker
   */
  public double strength(int index) {
    return strengths[index];
  }

  /**
   * Flux level at an edge.
   *
   * @param index from 0
   * @return in units of the local swing
   */
  public double level(int index) {
    return levels[index];
  }

  /**
   * Swing of flux beside an edge.
   *
   * @param index from 0
   * @return in the channel's unit times seconds; 0 for logic
   */
  public double swing(int index) {
    return swings[index];
  }

  /**
   * How long the flux stays near its extremum.
   *
   * @param index from 0
   * @return s; 0 where it is not known, and for logic
   */
  public double width(int index) {
    return widths[index];
  }

  /**
   * All times.
   *
   * @return a copy, s
   */
  public double[] times() {
    return times.clone();
  }
}
