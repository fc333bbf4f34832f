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

  /** Cost of the best reading up to each edge, nats. */
  final double[] costs;

  /**
   * Negative logarithm of the probability of the edges given the wheel, nats; infinite when the
   * search gave up, NaN when it took short cuts.
   */
  double cost;

  Labelling(int from, int to) {
    this.from = from;
    teeth = new int[to - from];
    steps = new int[to - from];
    confidences = new double[to - from];
    costs = new double[to - from];
    Arrays.fill(teeth, STRAY);
    Arrays.fill(confidences, 1.0);
  }

  /**
   * The same labels by the numbers of the whole wheel, its dead teeth counted and what is no tooth
   * stray.
   *
   * @param wheel by which the labels were given
   * @param teeth of the whole wheel
   * @return this, changed
   */
  Labelling renumbered(WheelTemplate wheel, int teeth) {
    int before = -1;
    int passed = 0;
    for (int i = 0; i < this.teeth.length; i++) {
      if (this.teeth[i] != STRAY) {
        passed = steps[i] == 0 ? 0 : passed + steps[i];
        before = steps[i] == 0 ? -1 : before;
        int now = wheel.number(this.teeth[i]);
        if (now != STRAY) {
          steps[i] = before < 0 ? 0 : steps(passed / wheel.teeth(), now - before, teeth);
          before = now;
          passed = 0;
        }
        this.teeth[i] = now;
      }
    }
    return this;
  }

  private static int steps(int turns, int further, int teeth) {
    int rest = Math.floorMod(further, teeth);
    return turns * teeth + (rest == 0 && turns == 0 ? teeth : rest);
  }

  /** Puts in the labels of a part of these edges. */
  void take(Labelling part) {
    int at = part.from - from;
    System.arraycopy(part.teeth, 0, teeth, at, part.size());
    System.arraycopy(part.steps, 0, steps, at, part.size());
    System.arraycopy(part.confidences, 0, confidences, at, part.size());
  }

  void reached(int edge, double nats) {
    costs[edge - from] = nats;
  }

  int size() {
    return teeth.length;
  }

  /** Whether every edge is the tooth after the one before. */
  boolean isPlain() {
    for (int i = 1; i < teeth.length; i++) {
      if (teeth[i] == STRAY || steps[i] != 1) {
        return false;
      }
    }
    return teeth[0] != STRAY;
  }

  /** Whether a turn ends and the next begins, with so many teeth in a row on each side. */
  boolean turns(int beside) {
    int inRow = 0;
    int since = 0;
    for (int i = 0; i < teeth.length; i++) {
      if (teeth[i] != STRAY) {
        boolean next = steps[i] == 1;
        since = next && teeth[i] == 0 && inRow >= beside ? 1 : next && since > 0 ? since + 1 : 0;
        inRow = next ? inRow + 1 : 1;
        if (since >= beside) {
          return true;
        }
      }
    }
    return false;
  }

  int count() {
    int n = 0;
    for (int t : teeth) {
      n += t == STRAY ? 0 : 1;
    }
    return n;
  }
}
