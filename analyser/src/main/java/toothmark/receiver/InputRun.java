package toothmark.receiver;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.SampledSignal;
import toothmark.edges.EdgeDirection;

/** Feeds samples to input stages, all in one pass. */
final class InputRun {

  private static final int BLOCK = 1 << 13;

  private final SampledSignal signal;
  private final double[] v;
  private final double[] seconds;
  private int count;

  private InputRun(SampledSignal signal) {
    this.signal = signal;
    this.v = new double[(int) Math.min(BLOCK, signal.size())];
    this.seconds = new double[v.length];
  }

  /**
   * Runs stages over a signal.
   *
   * @param offset what to subtract, V
   * @param timedEdge for {@code RISING} the voltage is negated after that
   * @return the edges of each stage
   */
  static List<ReceiverEdges> of(
      SampledSignal signal, double offset, EdgeDirection timedEdge, List<InputStage> stages) {
    double sign = timedEdge == EdgeDirection.FALLING ? 1 : -1;
    InputRun run = new InputRun(signal);
    List<ReceiverEdges.Builder> edges = new ArrayList<>();
    stages.forEach(s -> edges.add(new ReceiverEdges.Builder()));
    for (long at = 0; at < signal.size(); at += run.v.length) {
      run.load(at, offset, sign);
      for (int s = 0; s < stages.size(); s++) {
        run.feed(stages.get(s), edges.get(s));
      }
    }
    return edges.stream().map(ReceiverEdges.Builder::build).toList();
  }

  private void load(long from, double offset, double sign) {
    count = (int) Math.min(v.length, signal.size() - from);
    signal.read(from, v, count);
    for (int i = 0; i < count; i++) {
      v[i] = sign * (v[i] - offset);
      seconds[i] = signal.timeOf(from + i);
    }
  }

  private void feed(InputStage stage, ReceiverEdges.Builder edges) {
    for (int i = 0; i < count; i++) {
      if (stage.next(seconds[i], v[i]) == InputStage.Outcome.EDGE) {
        edges.add(stage.edgeSeconds());
      }
    }
  }
}
