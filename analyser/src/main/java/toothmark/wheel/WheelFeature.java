package toothmark.wheel;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Finds what gives an edge at one place of every turn and is no tooth: a bolt head, a keyway.
 *
 * <p>Looked for between neighbouring teeth only. In a gap such an edge may as well be the crossing
 * that a coil gives there when its wires are the wrong way round.
 */
final class WheelFeature {

  private static final int FEWEST_TURNS = 3;

  /** Of the turns in which it could be seen. */
  private static final double SHARE_OF_TURNS = 0.6;

  /** Its edges lie so near to their middle, in pitches. */
  private static final double NEAR = 0.12;

  private WheelFeature() {}

  /**
   * Looks for one.
   *
   * @param edges the series
   * @param labels of it; what it gives is stray by them
   * @param pattern the wheel
   * @return degrees after tooth 1; empty where none shows, and on a wheel without a gap, whose edge
   *     between teeth makes it one with an extra tooth
   */
  static OptionalDouble find(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    if (pattern.gapLengths().length == 0) {
      return OptionalDouble.empty();
    }
    double[] at = new double[labels.size()];
    int n = 0;
    int before = -1;
    int stray = -1;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] == Labelling.STRAY) {
        stray = stray < 0 ? i : stray;
        continue;
      }
      if (stray >= 0
          && before >= 0
          && labels.steps[i] == 1
          && !beforeGap(labels, before, pattern)) {
        at[n++] = place(edges, labels, pattern, new int[] {before, stray, i});
      }
      before = i;
      stray = -1;
    }
    return crowd(Arrays.copyOf(at, n), pattern, (double) labels.count() / pattern.teeth());
  }

  private static boolean beforeGap(Labelling labels, int i, WheelPattern pattern) {
    return pattern.degreesToNext(labels.teeth[i] + 1) > 1.5 * pattern.pitchDegrees();
  }

  /** Degrees after tooth 1 of the middle one of three edges. */
  private static double place(EdgeSeries edges, Labelling labels, WheelPattern pattern, int[] i) {
    double from = edges.times[labels.from + i[0]];
    double to = edges.times[labels.from + i[2]];
    double share = (edges.times[labels.from + i[1]] - from) / (to - from);
    int tooth = labels.teeth[i[0]] + 1;
    return pattern.degreesAfterTooth1(tooth) + share * pattern.degreesToNext(tooth);
  }

  private static OptionalDouble crowd(double[] at, WheelPattern pattern, double turns) {
    Arrays.sort(at);
    double width = 2 * NEAR * pattern.pitchDegrees();
    int first = 0;
    int most = 0;
    for (int from = 0, to = 0; from < at.length; from++) {
      while (to < at.length && at[to] - at[from] <= width) {
        to++;
      }
      first = to - from > most ? from : first;
      most = Math.max(most, to - from);
    }
    return most >= Math.max(FEWEST_TURNS, SHARE_OF_TURNS * turns)
        ? OptionalDouble.of(at[first + most / 2])
        : OptionalDouble.empty();
  }
}
