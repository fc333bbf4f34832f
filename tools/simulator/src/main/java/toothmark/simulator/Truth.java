package toothmark.simulator;

import java.util.List;

/**
 * What really happened, from the simulated machine and never from its signals. All times are those
 * of the capture.
 *
 * @param teeth every passing of a tooth, in time order
 * @param sparks every spark that was meant, in time order
 * @param alignment where tooth 1 is
 * @param speed of the crank during the capture
 * @param faults ids of what is wrong, as in the scenario
 */
public record Truth(
    List<ToothPassing> teeth,
    List<Spark> sparks,
    Alignment alignment,
    Speed speed,
    List<String> faults) {

  /**
   * Where tooth 1 is at the start of the capture, for the edge that the controller times.
   *
   * @param tooth1BtdcDegrees crank degrees before TDC of cylinder 1
   * @param nominalDegrees what the controller was told
   */
  public record Alignment(double tooth1BtdcDegrees, double nominalDegrees) {
    /**
     * How far the wheel is from what the controller was told.
     *
     * @return measured minus nominal, degrees; positive when the spark is further advanced
     */
    public double errorDegrees() {
      return tooth1BtdcDegrees - nominalDegrees;
    }
  }

  /**
   * Speed of the crank from moment to moment.
   *
   * @param minRpm slowest; negative when it turned back
   * @param maxRpm fastest
   */
  public record Speed(double minRpm, double maxRpm) {}

  /** Copies the lists. */
  public Truth {
    teeth = List.copyOf(teeth);
    sparks = List.copyOf(sparks);
    faults = List.copyOf(faults);
  }
}
