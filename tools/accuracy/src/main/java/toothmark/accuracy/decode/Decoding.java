package toothmark.accuracy.decode;

import java.util.Optional;
import toothmark.edges.ChannelSurvey;
import toothmark.receiver.ReferenceReceiver;
import toothmark.simulator.Pattern;
import toothmark.simulator.SimulatedCapture;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.WheelDecoder;

/**
 * What the analyser and two plain decoders make of one crank channel. The analyser finds the wheel;
 * the plain decoders are told it.
 *
 * @param naming edges and wheel
 * @param decoded every edge named by the wheel that was found; empty when none was
 */
record Decoding(Naming naming, Optional<DecodedWheel> decoded) {

  static Decoding of(SimulatedCapture capture) {
    return of(Naming.of(capture));
  }

  /** The same with a job sheet that names the wheel. */
  Decoding told() {
    return of(naming.told());
  }

  private static Decoding of(Naming naming) {
    return new Decoding(
        naming,
        naming
            .search()
            .found()
            .map(
                f ->
                    WheelDecoder.withDefaults()
                        .decode(naming.edges().train(f.toothEdge()), f.pattern())));
  }

  Labels labels() {
    return decoded.map(d -> Labels.of(d.events())).orElseGet(Labels::none);
  }

  LabelScore ours() {
    return LabelScore.of(naming.capture(), labels());
  }

  LabelScore follower() {
    return LabelScore.of(naming.capture(), Labels.follower(received(), pattern()));
  }

  LabelScore gapRatio() {
    return LabelScore.of(naming.capture(), Labels.gapRatio(received(), pattern()));
  }

  private Pattern pattern() {
    return naming.capture().scenario().wheel().pattern();
  }

  /** The edges that the reference receiver's input stage passes on. */
  private double[] received() {
    SimulatedCapture capture = naming.capture();
    return ReferenceReceiver.withDefaults()
        .withEdge(Naming.timed(capture))
        .listen(naming.signal(), Naming.kind(capture), ChannelSurvey.of(naming.signal()))
        .times();
  }
}
