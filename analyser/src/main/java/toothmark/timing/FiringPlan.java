package toothmark.timing;

import java.util.List;
import toothmark.ignition.FiringOrder;
import toothmark.units.CrankAngle;
import toothmark.wheel.WheelPattern;

/**
 * What a wheel is asked to do: which advances and which dwell up to which speed.
 *
 * @param wheel its pattern
 * @param tooth1BtdcDegrees how far before TDC of cylinder 1 tooth 1 passes, degrees
 * @param order the engine's firing order
 * @param demand advance, dwell and speed
 */
public record FiringPlan(
    WheelPattern wheel, double tooth1BtdcDegrees, FiringOrder order, Demand demand) {

  /** Beyond this share a coil hardly rests (common practice). */
  private static final double MOST_DUTY = 0.8;

  /**
   * What the ignition must do.
   *
   * @param leastAdvanceDegrees degrees before TDC
   * @param mostAdvanceDegrees degrees before TDC, not less
   * @param dwellSeconds how long a coil charges, s
   * @param rpm highest speed, rev/min
   * @param coilFiresEveryDegrees 360 for wasted spark, 720 for one coil each
   */
  public record Demand(
      double leastAdvanceDegrees,
      double mostAdvanceDegrees,
      double dwellSeconds,
      double rpm,
      double coilFiresEveryDegrees) {

    /**
     * Checks the order of the advances and the signs.
     *
     * @throws IllegalArgumentException if one is wrong
     */
    public Demand {
      if (!(leastAdvanceDegrees <= mostAdvanceDegrees)
          || !(dwellSeconds > 0 && rpm > 0 && coilFiresEveryDegrees > 0)) {
        throw new IllegalArgumentException(
            "the least advance comes before the most; dwell, speed and coil angle must be"
                + " positive");
      }
    }
  }

  /** Whether a coil has time for its dwell. */
  public enum Room {
    /** It has. */
    ENOUGH,
    /** Little is left for the spark to burn. */
    LITTLE,
    /** It has not. */
    NONE
  }

  /**
   * The same wheel, asked tooth by tooth.
   *
   * @return without faults
   */
  public FiringTeeth teeth() {
    return FiringTeeth.of(wheel, tooth1BtdcDegrees, order);
  }

  /**
   * All firings of a cycle at the highest speed.
   *
   * @param advanceDegrees advance, degrees BTDC
   * @return in firing order
   */
  public List<FiringTeeth.Firing> at(double advanceDegrees) {
    return teeth().plan(advanceDegrees, demand.dwellSeconds, demand.rpm);
  }

  /**
   * How far the crank turns while a coil charges at the highest speed.
   *
   * @return degrees
   */
  public double dwellDegrees() {
    return CrankAngle.turned(demand.rpm, demand.dwellSeconds);
  }

  /**
   * How much of the time between a coil's sparks is dwell.
   *
   * @return 1 and more when there is no room
   */
  public double duty() {
    return dwellDegrees() / demand.coilFiresEveryDegrees;
  }

  /**
   * Whether a coil has time for its dwell at the highest speed.
   *
   * @return see the words
   */
  public Room room() {
    return duty() >= 1 ? Room.NONE : duty() > MOST_DUTY ? Room.LITTLE : Room.ENOUGH;
  }

  /**
   * Cylinders for which a gap of the wheel passes between the earliest charge and the latest spark.
   *
   * @return in firing order
   */
  public List<Integer> metByGap() {
    FiringTeeth teeth = teeth();
    double earliest = demand.mostAdvanceDegrees + dwellDegrees();
    return order.order().stream()
        .filter(c -> teeth.gapBetween(c, earliest, demand.leastAdvanceDegrees))
        .toList();
  }
}
