package toothmark.wheel;

import java.util.Arrays;

/** Which tooth each edge is. */
final class Labelling {

  /** In place of a tooth: the edge is no tooth. */
  static final int STRAY = -1;

  final int from;
  final int[] teeth;

  /** Teeth further on than the labelled edge before; 0 where the count was taken up anew. */
  final int[] steps;

  final double[] confidences;

  /** Negative logarithm of the probability of the edges given the wheel, nats. */
  double cost;

  Labelling(int from, int to) {
    this.from = from;
    teeth = new int[to - from];
    steps = new int[to - from];
    confidences = new double[to - from];
    Arrays.fill(teeth, STRAY);
    Arrays.fill(confidences, 1.0);
  }

  int size() {
    return teeth.length;
  }

  int count() {
    int n = 0;
    for (int t : teeth) {
      n += t == STRAY ? 0 : 1;
    }
    return n;
  }
}
