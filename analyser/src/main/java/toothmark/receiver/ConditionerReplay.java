package toothmark.receiver;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.SampledSignal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.EdgeDirection;

/**
 * Plays a recorded wave to other input circuits, to see which would have lost teeth and which would
 * have let strays in.
 *
 * <p>Not a simulation of a part: no input network, no loading of the sensor. All circuits hear the
 * record in one pass.
 */
public final class ConditionerReplay {

  /** An edge this near to a tooth, as a share of the distance to its neighbour, is that tooth. */
  private static final double NEAR = 0.3;

  private final SampledSignal signal;
  private final double mean;
  private final EdgeDirection timedEdge;

  /**
   * Prepares a replay.
   *
   * @param signal the wave
   * @param survey of that signal
   * @param timedEdge the edge that the controller times; for {@code RISING} the voltage is negated
   */
  public ConditionerReplay(SampledSignal signal, ChannelSurvey survey, EdgeDirection timedEdge) {
    this.signal = signal;
    this.mean = survey.mean();
    this.timedEdge = timedEdge;
  }

  /**
   * What became of the record in one circuit.
   *
   * @param conditioner the circuit
   * @param teethLost teeth without an edge near
   * @param straysAdmitted edges without a tooth near
   * @param trace edges and losses of count
   */
  public record Result(
      Conditioner conditioner, int teethLost, int straysAdmitted, ReceiverTrace trace) {}

  /**
   * Plays the record.
   *
   * @param conditioners circuits to try
   * @param wheel what the follower is told
   * @param toothTimes when teeth passed, as decoded, s, rising
   * @return one result for each circuit, in their order
   */
  public List<Result> play(
      List<Conditioner> conditioners, FollowedWheel wheel, double[] toothTimes) {
    List<ReceiverEdges> heard = InputRun.of(signal, mean, timedEdge, stages(conditioners));
    List<Result> results = new ArrayList<>();
    for (int i = 0; i < heard.size(); i++) {
      ReceiverEdges edges = heard.get(i);
      int found = matched(edges, toothTimes);
      results.add(
          new Result(
              conditioners.get(i),
              toothTimes.length - found,
              edges.size() - found,
              ReferenceReceiver.follow(edges, wheel)));
    }
    return results;
  }

  /**
   * Fixed levels on a grid.
   *
   * @param thresholdsVolts middles, V
   * @param hysteresesVolts to each side, V
   * @return every pair, thresholds in the outer loop
   */
  public static List<Conditioner> grid(double[] thresholdsVolts, double[] hysteresesVolts) {
    List<Conditioner> all = new ArrayList<>();
    for (double threshold : thresholdsVolts) {
      for (double hysteresis : hysteresesVolts) {
        all.add(Conditioner.threshold(threshold, hysteresis));
      }
    }
    return all;
  }

  private static List<InputStage> stages(List<Conditioner> conditioners) {
    return conditioners.stream().map(Conditioner::newStage).toList();
  }

  /** How many teeth have an edge of their own near. */
  private static int matched(ReceiverEdges edges, double[] teeth) {
    int found = 0;
    int e = 0;
    for (int i = 0; i < teeth.length; i++) {
      double reach = NEAR * distanceToNeighbour(teeth, i);
      while (e < edges.size() && edges.time(e) < teeth[i] - reach) {
        e++;
      }
      if (e < edges.size() && edges.time(e) <= teeth[i] + reach) {
        found++;
        e++;
      }
    }
    return found;
  }

  private static double distanceToNeighbour(double[] teeth, int i) {
    double before = i > 0 ? teeth[i] - teeth[i - 1] : Double.POSITIVE_INFINITY;
    double after = i + 1 < teeth.length ? teeth[i + 1] - teeth[i] : Double.POSITIVE_INFINITY;
    return Math.min(before, after);
  }
}
