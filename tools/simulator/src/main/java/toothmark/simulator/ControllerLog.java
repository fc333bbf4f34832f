package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;

/**
 * How a controller keeps its log: on its own clock, at a low rate, rounded.
 *
 * @param rateHz rows a second
 * @param offsetSeconds what its clock shows at the first sample of the capture
 * @param drift how much faster its clock runs, as a share
 * @param averageSeconds over which it averages the speed that it writes
 * @param loadPercent what it writes for the load
 */
public record ControllerLog(
    double rateHz, double offsetSeconds, double drift, double averageSeconds, double loadPercent) {
  private static final double LEAD_SECONDS = 0.15;
  private static final double ADVANCE_STEP_DEGREES = 0.1;

  /** Twenty rows a second on a clock that is 37.4 s ahead. */
  public static final ControllerLog USUAL = new ControllerLog(20.0, 37.4, 20e-6, 0.05, 20.0);

  /**
   * One row.
   *
   * @param seconds on the log's clock
   * @param rpm mean speed, whole rev/min
   * @param loadPercent load
   * @param advanceDegrees commanded advance, tenths of a degree
   */
  public record Row(double seconds, double rpm, double loadPercent, double advanceDegrees) {}

  List<Row> rows(Scenario scenario, CrankMotion crank) {
    double from = Math.max(-LEAD_SECONDS, crank.startSeconds() + averageSeconds);
    double to = scenario.recorder().durationSeconds();
    long first = (long) Math.ceil(clock(from) * rateHz);
    List<Row> rows = new ArrayList<>();
    for (long tick = first; tick / rateHz <= clock(to); tick++) {
      double shown = tick / rateHz;
      double t = (shown - offsetSeconds) / (1.0 + drift);
      double turned = crank.angleAt(t) - crank.angleAt(t - averageSeconds);
      double rpm = Math.rint(turned / (6.0 * averageSeconds));
      double advance = scenario.controller().advance().degreesAt(crank.rpmAt(t));
      double rounded = Math.rint(advance / ADVANCE_STEP_DEGREES) * ADVANCE_STEP_DEGREES;
      rows.add(new Row(shown, rpm, loadPercent, rounded));
    }
    return rows;
  }

  private double clock(double captureSeconds) {
    return offsetSeconds + captureSeconds * (1.0 + drift);
  }
}
