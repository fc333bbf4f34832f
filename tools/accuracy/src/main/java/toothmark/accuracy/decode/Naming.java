package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.List;
import toothmark.accuracy.InMemory;
import toothmark.capture.Signal;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.simulator.Pattern;
import toothmark.simulator.Recorder;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.wheel.WheelIdentification;
import toothmark.wheel.WheelIdentifier;
import toothmark.wheel.WheelPattern;
import toothmark.wheel.WheelSearch;

/**
 * Which wheel the analyser sees in one crank channel. It is told the kind of sensor and its timed
 * edge, but not the wheel.
 *
 * @param capture what was recorded
 * @param signal its crank channel
 * @param edges of it
 * @param search what came of the search for a wheel
 */
record Naming(SimulatedCapture capture, Signal signal, CrankEdges edges, WheelSearch search) {

  static Naming of(SimulatedCapture capture) {
    return of(capture, WheelIdentifier.withDefaults());
  }

  /** The same with a job sheet that names the wheel. */
  Naming told() {
    WheelPattern pattern = pattern(capture.scenario().wheel().pattern());
    return of(capture, WheelIdentifier.withDefaults().withStated(pattern));
  }

  private static WheelPattern pattern(Pattern truth) {
    String[] parts = truth.name().split("-");
    if (parts.length < 3) {
      return WheelPattern.parse(truth.name());
    }
    List<Integer> runs = new ArrayList<>();
    List<Integer> gaps = new ArrayList<>();
    int run = 1;
    for (int k = 1; k <= truth.teeth(); k++) {
      double next = k < truth.teeth() ? truth.toothSlots().get(k) : truth.slots();
      int step = (int) Math.round(next - truth.toothSlots().get(k - 1));
      if (step > 1) {
        runs.add(run);
        gaps.add(step - 1);
      }
      run = step > 1 ? 1 : run + 1;
    }
    return WheelPattern.ofRuns(truth.slots(), ints(runs), ints(gaps));
  }

  private static int[] ints(List<Integer> list) {
    return list.stream().mapToInt(Integer::intValue).toArray();
  }

  private static Naming of(SimulatedCapture capture, WheelIdentifier identifier) {
    Signal signal = InMemory.crank(capture);
    CrankEdges edges = EdgeDetector.withDefaults().withKind(kind(capture)).detect(signal);
    WheelSearch search = identifier.withTimedEdge(timed(capture)).identify(edges);
    return new Naming(capture, signal, edges, search);
  }

  static EdgeDirection timed(SimulatedCapture capture) {
    return capture.scenario().sensor() instanceof Sensor.Hall hall
            && hall.timedEdge() == Sensor.Edge.RISING
        ? EdgeDirection.RISING
        : EdgeDirection.FALLING;
  }

  static SensorKind kind(SimulatedCapture capture) {
    boolean volts = capture.scenario().recorder().kind() == Recorder.Kind.OSCILLOSCOPE;
    return volts && capture.scenario().sensor() instanceof Sensor.VariableReluctance
        ? SensorKind.VARIABLE_RELUCTANCE
        : SensorKind.HALL;
  }

  /** Whether the wheel was named, gaps in their places. */
  boolean right() {
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

  /** True wheel and the one found, in words. */
  String words() {
    return capture.scenario().wheel().pattern().name()
        + " was named "
        + search.found().map(f -> f.pattern().toString()).orElse("none");
  }
}
