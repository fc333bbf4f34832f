package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.List;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.ToothPassing;
import toothmark.simulator.Trace;
import toothmark.simulator.Truth;

/**
 * Lists of edges made straight from the machine's truth: each tooth's passing with some scatter,
 * teeth taken out and strays put in at random. All edges look alike, so that only their times can
 * tell a tooth from a stray.
 */
final class EdgeCases {

  /** Resolution of the list, as of a 10 MHz clock. */
  private static final double CLOCK_HZ = 1e7;

  /** Scatter of an edge: of its angle (tooth form) and of its time (electronics). */
  private static final double SCATTER_DEGREES = 0.02;

  private static final double SCATTER_SECONDS = 0.5e-6;

  /** The machine runs without a wave to render: only its truth is wanted. */
  private static final double TRUTH_ONLY_HZ = 1000;

  private EdgeCases() {}

  /** An edge and the index of the tooth's passing it comes from, -1 for a stray. */
  record Edge(double seconds, int passing) {}

  /** A capture and where each of its edges comes from. */
  record EdgeCase(SimulatedCapture capture, List<Edge> edges) {}

  static EdgeCase of(Scenario scenario, CaseName name, double strayShare, double lostShare) {
    double seconds = scenario.recorder().durationSeconds();
    Scenario truthOnly = scenario.withRecorder(Recorder.oscilloscope(TRUTH_ONLY_HZ, seconds));
    SimulatedCapture machine = Simulation.of(truthOnly).run();
    Dice dice = Dice.of(name, "edges");
    List<ToothPassing> teeth = machine.truth().teeth();
    List<ToothPassing> kept = new ArrayList<>();
    List<Edge> edges = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      ToothPassing t = teeth.get(i);
      if (dice.chance(lostShare)) {
        kept.add(lost(t));
      } else {
        kept.add(t);
        edges.add(new Edge(t.seconds() + scatter(teeth, i, dice), i));
      }
      addStrays(teeth, i, strayShare, dice, edges);
    }
    List<Edge> list = onTheClock(edges);
    Recorder logger =
        new Recorder(Recorder.Kind.EDGE_LOGGER, CLOCK_HZ, seconds, 0.0, Recorder.Front.USUAL);
    List<Double> times = list.stream().map(Edge::seconds).toList();
    Truth old = machine.truth();
    Truth truth = new Truth(kept, List.of(), old.alignment(), old.speed(), List.of());
    return new EdgeCase(
        new SimulatedCapture(
            scenario.withRecorder(logger),
            List.of(new Trace.Edges(Trace.Role.CRANK, "crank", times)),
            List.of(),
            truth),
        list);
  }

  private static ToothPassing lost(ToothPassing t) {
    return new ToothPassing(
        t.seconds(), t.tooth(), t.revolution(), t.crankDegrees(), ToothPassing.Outcome.LOST);
  }

  private static double scatter(List<ToothPassing> teeth, int i, Dice dice) {
    ToothPassing a = teeth.get(Math.max(0, i - 1));
    ToothPassing b = teeth.get(Math.min(teeth.size() - 1, i + 1));
    double secondsPerDegree =
        (b.seconds() - a.seconds()) / Math.max(1e-6, b.crankDegrees() - a.crankDegrees());
    double fromAngle = SCATTER_DEGREES * Math.min(secondsPerDegree, 0.01) * dice.normal();
    return fromAngle + SCATTER_SECONDS * dice.normal();
  }

  /** As many strays for each pitch, gaps included, as the share says; Poisson in time. */
  private static void addStrays(
      List<ToothPassing> teeth, int i, double share, Dice dice, List<Edge> edges) {
    if (share == 0 || i + 1 == teeth.size()) {
      return;
    }
    double from = teeth.get(i).seconds();
    double to = teeth.get(i + 1).seconds();
    for (double t = from + dice.exponential((to - from) / share);
        t < to;
        t += dice.exponential((to - from) / share)) {
      edges.add(new Edge(t, -1));
    }
  }

  /** Rounds to the clock and sorts; of two edges on one tick the first stays. */
  private static List<Edge> onTheClock(List<Edge> edges) {
    List<Edge> sorted = new ArrayList<>(edges);
    sorted.sort(java.util.Comparator.comparingDouble(Edge::seconds));
    List<Edge> result = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (Edge e : sorted) {
      double t = Math.rint(e.seconds() * CLOCK_HZ) / CLOCK_HZ;
      if (t > last) {
        result.add(new Edge(t, e.passing()));
        last = t;
      }
    }
    return result;
  }
}
