package toothmark.simulator;

import java.util.List;
import java.util.Optional;

/**
 * What the recorder kept, and what really happened.
 *
 * @param scenario that it came from
 * @param traces the channels: crank, coils, TDC mark
 * @param log what the controller wrote down; empty when it keeps no log
 * @param truth what really happened
 */
public record SimulatedCapture(
    Scenario scenario, List<Trace> traces, List<ControllerLog.Row> log, Truth truth) {
  /** Copies the lists. */
  public SimulatedCapture {
    traces = List.copyOf(traces);
    log = List.copyOf(log);
  }

  /**
   * Samples a second.
   *
   * @return of every channel
   */
  public double sampleRateHz() {
    return scenario.recorder().sampleRateHz();
  }

  /**
   * Time of the first sample.
   *
   * @return seconds
   */
  public double startSeconds() {
    return scenario.recorder().startSeconds();
  }

  /**
   * The crank channel.
   *
   * @return always the first
   */
  public Trace crank() {
    return traces.get(0);
  }

  /**
   * The crank channel of an oscilloscope.
   *
   * @return its samples
   * @throws IllegalStateException when the recorder kept no voltages
   */
  public Trace.Analogue crankVolts() {
    if (crank() instanceof Trace.Analogue analogue) {
      return analogue;
    }
    throw new IllegalStateException(scenario.recorder().kind() + " keeps no voltages");
  }

  /**
   * The TDC channel.
   *
   * @return empty when it was not recorded
   */
  public Optional<Trace> tdc() {
    return traces.stream().filter(t -> t.role() == Trace.Role.TDC).findFirst();
  }

  /**
   * The coils' channels.
   *
   * @return in the order of the hookup
   */
  public List<Trace> coils() {
    return traces.stream().filter(t -> t.role() == Trace.Role.COIL).toList();
  }
}
