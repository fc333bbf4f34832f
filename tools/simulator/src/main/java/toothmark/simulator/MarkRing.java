package toothmark.simulator;

import java.util.Arrays;

/** Marks at fixed angles of a shaft, the same on every turn of {@code periodDegrees}. */
final class MarkRing {
  private final double periodDegrees;
  private final double[] degrees;

  /** Marks in rising order, all within one period of each other. */
  MarkRing(double periodDegrees, double... degrees) {
    this.periodDegrees = periodDegrees;
    this.degrees = degrees.clone();
    for (int i = 1; i < degrees.length; i++) {
      if (!(degrees[i] > degrees[i - 1])) {
        throw new IllegalArgumentException("marks out of order: " + Arrays.toString(degrees));
      }
    }
  }

  int size() {
    return degrees.length;
  }

  /** Angle of a mark that is counted on through the turns. */
  double degrees(long mark) {
    long turn = Math.floorDiv(mark, (long) degrees.length);
    return turn * periodDegrees + degrees[(int) (mark - turn * degrees.length)];
  }

  /** The first mark at this angle or beyond it. */
  long firstAtOrAfter(double angleDegrees) {
    long turn = (long) Math.floor(angleDegrees / periodDegrees) - 2;
    long mark = turn * degrees.length;
    while (degrees(mark) < angleDegrees) {
      mark++;
    }
    return mark;
  }
}
