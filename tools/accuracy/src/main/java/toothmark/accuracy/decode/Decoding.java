package toothmark.accuracy.decode;

import java.util.Optional;
import toothmark.accuracy.InMemory;
import toothmark.capture.Signal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.receiver.ReferenceReceiver;
import toothmark.simulator.Pattern;
import toothmark.simulator.Recorder;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.WheelDecoder;
import toothmark.wheel.WheelIdentification;
import toothmark.wheel.WheelIdentifier;
import toothmark.wheel.WheelPattern;
import toothmark.wheel.WheelSearch;

/**
 * What the analyser and two plain decoders make of one crank channel. The analyser is told the kind
 * of sensor and its timed edge, but not the wheel; the plain decoders are told the wheel.
 */
final class Decoding {

  final CrankEdges edges;
  final WheelSearch search;
  final Optional<DecodedWheel> decoded;

  private final SimulatedCapture capture;
  private final Signal signal;
  private final EdgeDirection timed;

  Decoding(SimulatedCapture capture) {
    this.capture = capture;
    signal = InMemory.crank(capture);
    timed =
        capture.scenario().sensor() instanceof Sensor.Hall hall
                && hall.timedEdge() == Sensor.Edge.RISING
            ? EdgeDirection.RISING
            : EdgeDirection.FALLING;
    edges = EdgeDetector.withDefaults().withKind(kind()).detect(signal);
    search = WheelIdentifier.withDefaults().withTimedEdge(timed).identify(edges);
    decoded =
        search
            .found()
            .map(f -> WheelDecoder.withDefaults().decode(edges.train(f.toothEdge()), f.pattern()));
  }

  private SensorKind kind() {
    boolean volts = capture.scenario().recorder().kind() == Recorder.Kind.OSCILLOSCOPE;
    return volts && capture.scenario().sensor() instanceof Sensor.VariableReluctance
        ? SensorKind.VARIABLE_RELUCTANCE
        : SensorKind.HALL;
  }

  /** Whether the wheel was named, gaps in their places. */
  boolean wheelRight() {
    return search.found().map(WheelIdentification::pattern).filter(this::isTrue).isPresent();
  }

  private boolean isTrue(WheelPattern found) {
    Pattern truth = capture.scenario().wheel().pattern();
    boolean same = found.toString().equals(truth.name()) && found.teeth() == truth.teeth();
    for (int k = 0; same && k < truth.teeth(); k++) {
      double degrees = truth.toothSlots().get(k) * truth.pitchDegrees();
      same = Math.abs(found.degreesAfterTooth1(k + 1) - degrees) < 1e-6;
    }
    return same;
  }

  String wheelName() {
    return search.found().map(f -> f.pattern().toString()).orElse("none");
  }

  LabelScore ours() {
    Labels labels = decoded.map(d -> Labels.of(d.events())).orElseGet(Labels::none);
    return LabelScore.of(capture, labels);
  }

  LabelScore follower() {
    return LabelScore.of(
        capture, Labels.follower(received(), capture.scenario().wheel().pattern()));
  }

  LabelScore gapRatio() {
    return LabelScore.of(
        capture, Labels.gapRatio(received(), capture.scenario().wheel().pattern()));
  }

  /** The edges that the reference receiver's input stage passes on. */
  private double[] received() {
    return ReferenceReceiver.withDefaults()
        .withEdge(timed)
        .listen(signal, kind(), ChannelSurvey.of(signal))
        .times();
  }
}
