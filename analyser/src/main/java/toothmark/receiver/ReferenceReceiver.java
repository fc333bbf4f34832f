package toothmark.receiver;

import java.util.List;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;

/**
 * What a textbook controller would have made of a crank signal, faults and all.
 *
 * <p>Not our best decoding: an input stage and a follower, both simple on purpose, so that a loss
 * here is what the user sees fail. The input stage of a wave is {@link Conditioner#reference()}, of
 * a switching sensor {@link TwoLevelInput}; lists of changes or instants are taken as they are. The
 * follower is {@link Follower}.
 */
public final class ReferenceReceiver {

  private static final double LOW_LEVEL = 0.01;
  private static final double HIGH_LEVEL = 0.99;

  private final EdgeDirection timedEdge;

  private ReferenceReceiver(EdgeDirection timedEdge) {
    this.timedEdge = timedEdge;
  }

  /**
   * A receiver that times falling edges.
   *
   * @return the default
   */
  public static ReferenceReceiver withDefaults() {
    return new ReferenceReceiver(EdgeDirection.FALLING);
  }

  /**
   * Sets the edge that the controller times.
   *
   * @param edge for {@code RISING} the voltage is negated first
   * @return a receiver for that edge
   */
  public ReferenceReceiver withEdge(EdgeDirection edge) {
    return new ReferenceReceiver(edge);
  }

  /**
   * Runs the input stage over a signal.
   *
   * @param signal the crank channel
   * @param kind kind of sensor, which chooses the input stage for samples
   * @param survey of that signal
   * @return the edges that the follower gets
   */
  public ReceiverEdges listen(Signal signal, SensorKind kind, ChannelSurvey survey) {
    if (signal instanceof SampledSignal sampled) {
      return listen(sampled, kind, survey);
    }
    if (signal instanceof StepSignal steps) {
      return changes(steps);
    }
    EventSignal events = (EventSignal) signal;
    ReceiverEdges.Builder edges = new ReceiverEdges.Builder();
    for (int i = 0; i < events.size(); i++) {
      edges.add(events.time(i));
    }
    return edges.build();
  }

  private ReceiverEdges listen(SampledSignal signal, SensorKind kind, ChannelSurvey survey) {
    if (kind == SensorKind.VARIABLE_RELUCTANCE) {
      InputStage stage = Conditioner.reference().newStage();
      return InputRun.of(signal, survey.mean(), timedEdge, List.of(stage)).get(0);
    }
    double low = survey.quantile(LOW_LEVEL);
    double high = survey.quantile(HIGH_LEVEL);
    InputStage stage =
        timedEdge == EdgeDirection.FALLING
            ? new TwoLevelInput(low, high)
            : new TwoLevelInput(-high, -low);
    return InputRun.of(signal, 0, timedEdge, List.of(stage)).get(0);
  }

  private ReceiverEdges changes(StepSignal signal) {
    ReceiverEdges.Builder edges = new ReceiverEdges.Builder();
    for (int i = 1; i < signal.size(); i++) {
      double step = signal.level(i) - signal.level(i - 1);
      if (timedEdge == EdgeDirection.FALLING ? step < 0 : step > 0) {
        edges.add(signal.time(i));
      }
    }
    return edges.build();
  }

  /**
   * Follows a wheel over the edges.
   *
   * @param edges what the input stage gave
   * @param wheel the wheel that the controller is told
   * @return the edges and every loss
   */
  public static ReceiverTrace follow(ReceiverEdges edges, FollowedWheel wheel) {
    return new ReceiverTrace(edges.times(), Follower.losses(edges, wheel));
  }
}
