package toothmark.receiver;

import java.util.List;

/** What the reference receiver made of a crank signal: its edges, and where it lost its count. */
public final class ReceiverTrace {

  private final double[] edgeTimes;
  private final List<SyncLoss> losses;

  /**
   * Builds a trace; array and list are copied.
   *
   * @param edgeTimes s, rising
   * @param losses in time order
   */
  public ReceiverTrace(double[] edgeTimes, List<SyncLoss> losses) {
    this.edgeTimes = edgeTimes.clone();
    this.losses = List.copyOf(losses);
  }

  /**
   * How many edges the input stage passed on.
   *
   * @return 0 or more
   */
  public int edges() {
    return edgeTimes.length;
  }

  /**
   * Time of an edge.
   *
   * @param index from 0
   * @return s
   */
  public double edgeTime(int index) {
    return edgeTimes[index];
  }

  /**
   * Where the follower lost its count.
   *
   * @return in time order
   */
  public List<SyncLoss> losses() {
    return losses;
  }

  /**
   * How many losses fall in a phase.
   *
   * @param phase cranking or running
   * @return 0 or more
   */
  public int losses(SyncLoss.Phase phase) {
    return (int) losses.stream().filter(l -> l.phase() == phase).count();
  }
}
