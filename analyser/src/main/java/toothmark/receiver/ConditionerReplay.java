package toothmark.receiver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
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

  /** Of the sweep, as shares of the height that few samples exceed. */
  private static final double[] THRESHOLDS = {-0.5, -0.25, -0.1, 0, 0.1, 0.25, 0.5};

  private static final double LEAST_HYSTERESIS = 1.0 / 512;
  private static final int HYSTERESES = 10;
  private static final double RARELY_EXCEEDED = 0.99;

  /** Share of teeth that may lie before the first edge, at rest, or in what no circuit hears. */
  private static final double MOST_LOST = 0.02;

  private final SampledSignal signal;
  private final double mean;
  private final double heightVolts;
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
    this.heightVolts =
        Math.max(
            survey.quantile(RARELY_EXCEEDED) - mean, mean - survey.quantile(1 - RARELY_EXCEEDED));
    this.timedEdge = timedEdge;
  }

  /**
   * What became of the record in one circuit.
   *
   * @param conditioner the circuit
   * @param misses teeth without an edge near, and edges without a tooth near
   * @param trace edges and losses of count
   */
  public record Result(Conditioner conditioner, EdgeMisses misses, ReceiverTrace trace) {

    /**
     * Teeth without an edge near.
     *
     * @return 0 or more
     */
    public int teethLost() {
      return misses.teethLost();
    }

    /**
     * Edges without a tooth near.
     *
     * @return 0 or more
     */
    public int straysAdmitted() {
      return misses.strays();
    }
  }

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
      results.add(
          new Result(
              conditioners.get(i),
              EdgeMisses.of(edges, wheel, toothTimes),
              ReferenceReceiver.follow(edges, wheel)));
    }
    return results;
  }

  /**
   * Plays the record to fixed levels on a grid that its own heights span.
   *
   * @param wheel what the follower is told
   * @param toothTimes when teeth passed, as decoded, s, rising
   * @return what each pair of levels would have cost
   */
  public LevelWindow sweep(FollowedWheel wheel, double[] toothTimes) {
    List<Double> thresholds = Arrays.stream(THRESHOLDS).mapToObj(t -> t * heightVolts).toList();
    List<Double> hystereses =
        IntStream.range(0, HYSTERESES)
            .mapToObj(i -> heightVolts * LEAST_HYSTERESIS * Math.pow(2, i))
            .toList();
    List<List<LevelGrid.Pair>> pairs = new ArrayList<>();
    for (double t : thresholds) {
      pairs.add(
          hystereses.stream()
              .map(h -> new LevelGrid.Pair(t + h, t - h, new EdgeTally(wheel, toothTimes)))
              .toList());
    }
    InputRun.of(signal, mean, timedEdge, pairs.stream().<InputStage>map(LevelGrid::new).toList());
    List<LevelWindow.Cell> cells =
        pairs.stream().flatMap(List::stream).map(p -> cell(p, toothTimes.length)).toList();
    return new LevelWindow(thresholds, hystereses, cells);
  }

  private static LevelWindow.Cell cell(LevelGrid.Pair pair, int teeth) {
    EdgeTally t = pair.heard();
    boolean hears = t.teethLost() <= MOST_LOST * teeth;
    return new LevelWindow.Cell(t.teethLost(), t.strays(), t.losses(), hears && t.losses() == 0);
  }

  /**
   * How far the peak before each tooth rises over the level that arms the reference circuit.
   *
   * @param toothTimes when teeth passed, as decoded, s, rising
   * @return peak over level for each tooth: not above 1 where it is not armed
   */
  public double[] armingMargins(double[] toothTimes) {
    ArmingMargins margins = new ArmingMargins(toothTimes);
    InputRun.of(signal, mean, timedEdge, List.of(margins));
    return margins.margins();
  }

  private static List<InputStage> stages(List<Conditioner> conditioners) {
    return conditioners.stream().map(Conditioner::newStage).toList();
  }
}
