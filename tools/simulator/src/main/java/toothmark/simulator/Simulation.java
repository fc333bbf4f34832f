package toothmark.simulator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Runs a scenario: the crank turns, the wheel passes the sensor, the controller makes its sparks,
 * the recorder keeps what it sees. Deterministic; instances may run in parallel.
 */
public final class Simulation {
  private final Scenario scenario;

  private Simulation(Scenario scenario) {
    this.scenario = scenario;
  }

  /**
   * A simulation of a scenario.
   *
   * @param scenario everything that decides the capture
   * @return ready to run
   */
  public static Simulation of(Scenario scenario) {
    return new Simulation(scenario);
  }

  /**
   * Runs it.
   *
   * @return what was recorded, and the truth
   * @throws IllegalArgumentException when the scenario contradicts itself
   */
  public SimulatedCapture run() {
    Machine machine = new Machine(scenario);
    List<Trace> traces = new RecordedTraces(scenario, machine).all();
    List<ToothPassing> teeth = withOpenWindows(machine.teeth());
    if (traces.get(0) instanceof Trace.Edges edges) {
      teeth = withUnloggedEdges(teeth, edges.edges());
    }
    double shift = scenario.recorder().startSeconds();
    Truth.Alignment alignment =
        new Truth.Alignment(
            machine.tooth1BtdcDegrees(), scenario.controller().nominalTooth1BtdcDegrees());
    Truth truth =
        new Truth(
            teeth.stream().map(t -> moved(t, shift)).toList(),
            insideCapture(machine.sparks(), shift),
            alignment,
            machine.speed(),
            scenario.faults());
    List<ControllerLog.Row> log =
        scenario.log().map(l -> l.rows(scenario, machine.crank())).orElse(List.of());
    return new SimulatedCapture(scenario, traces, log, truth);
  }

  private List<ToothPassing> withOpenWindows(List<ToothPassing> teeth) {
    List<Disturbance.Window> open = new ArrayList<>();
    for (Disturbance disturbance : scenario.disturbances()) {
      if (disturbance instanceof Disturbance.OpenCircuit circuit) {
        open.addAll(circuit.windows());
      }
    }
    return teeth.stream()
        .map(t -> open.stream().anyMatch(w -> w.holds(t.seconds())) ? t.lost() : t)
        .toList();
  }

  /**
   * Of a list of edges, a tooth without an entry within 0.3 of the way to the next gave none. The
   * list's truth starts with the first tooth that did.
   */
  private List<ToothPassing> withUnloggedEdges(List<ToothPassing> teeth, List<Double> edges) {
    double shift = scenario.recorder().startSeconds();
    double[] times = edges.stream().mapToDouble(e -> e - shift).toArray();
    List<ToothPassing> result = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      double t = teeth.get(i).seconds();
      double before = i > 0 ? t - teeth.get(i - 1).seconds() : Double.POSITIVE_INFINITY;
      double after = i + 1 < teeth.size() ? teeth.get(i + 1).seconds() - t : before;
      double reach = 0.3 * Math.min(before, after);
      int at = Arrays.binarySearch(times, t - reach);
      int next = at < 0 ? -at - 1 : at;
      boolean logged = next < times.length && times[next] <= t + reach;
      if (logged || !result.isEmpty()) {
        result.add(logged ? teeth.get(i) : teeth.get(i).lost());
      }
    }
    return result.isEmpty() ? teeth.stream().map(ToothPassing::lost).toList() : result;
  }

  private static ToothPassing moved(ToothPassing t, double shift) {
    return new ToothPassing(
        t.seconds() + shift, t.tooth(), t.revolution(), t.crankDegrees(), t.outcome());
  }

  private List<Spark> insideCapture(List<Spark> sparks, double shift) {
    double end = scenario.recorder().durationSeconds();
    return sparks.stream()
        .filter(s -> s.seconds() >= 0.0 && s.seconds() < end)
        .map(
            s ->
                new Spark(s.seconds() + shift, s.coil(), s.outcome(), s.angles(), s.dwellSeconds()))
        .toList();
  }
}
