package toothmark.receiver;

import java.util.BitSet;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Which teeth gave an input circuit no edge, and which of its edges are no teeth. */
public final class EdgeMisses {

  private final double[] lost;
  private final double[] strays;

  private EdgeMisses(double[] lost, double[] strays) {
    this.lost = lost;
    this.strays = strays;
  }

  static EdgeMisses of(ReceiverEdges edges, FollowedWheel wheel, double[] toothTimes) {
    EdgeTally tally = new EdgeTally(wheel, toothTimes);
    BitSet found = new BitSet(toothTimes.length);
    DoubleStream.Builder strays = DoubleStream.builder();
    for (int e = 0; e < edges.size(); e++) {
      if (tally.add(edges.time(e))) {
        found.set(tally.lastTooth());
      } else {
        strays.add(edges.time(e));
      }
    }
    return new EdgeMisses(
        IntStream.range(0, toothTimes.length)
            .filter(i -> !found.get(i))
            .mapToDouble(i -> toothTimes[i])
            .toArray(),
        strays.build().toArray());
  }

  /**
   * How many teeth gave no edge.
   *
   * @return 0 or more
   */
  public int teethLost() {
    return lost.length;
  }

  /**
   * When a tooth passed that gave no edge.
   *
   * @param index from 0, in time order
   * @return s
   */
  public double toothLost(int index) {
    return lost[index];
  }

  /**
   * How many edges are no teeth.
   *
   * @return 0 or more
   */
  public int strays() {
    return strays.length;
  }

  /**
   * When an edge came that is no tooth.
   *
   * @param index from 0, in time order
   * @return s
   */
  public double stray(int index) {
    return strays[index];
  }
}
