package toothmark.receiver;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

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
   * The same with better known speeds: among strays, edges tell too great a speed.
   *
   * @param rpmAt speed at an instant, rev/min; NaN where it is not known
   * @return the trace
   */
  public ReceiverTrace withSpeeds(DoubleUnaryOperator rpmAt) {
    List<SyncLoss> rated = new ArrayList<>();
    for (SyncLoss l : losses) {
      double rpm = rpmAt.applyAsDouble(l.timeSeconds());
      rated.add(Double.isNaN(rpm) ? l : SyncLoss.at(l.timeSeconds(), l.teethCounted(), rpm));
    }
    return new ReceiverTrace(edgeTimes, rated);
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
