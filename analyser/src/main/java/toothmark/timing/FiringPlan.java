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

  /**
   * Checks that a coil fires a whole number of times in a cycle.
   *
   * @throws IllegalArgumentException if it does not, or more often than there are cylinders
   */
  public FiringPlan {
    double times = FiringOrder.CYCLE / demand.coilFiresEveryDegrees;
    int most = Math.max(2, order.order().size());
    if (Math.abs(times - Math.rint(times)) > 1e-6 || times > most) {
      throw new IllegalArgumentException(
          "a coil that fires every "
              + demand.coilFiresEveryDegrees
              + " degrees fits no engine of "
              + order.order().size()
              + " cylinders: write 720 over a whole number up to "
              + most);
    }
  }

  /** Beyond this share a coil hardly rests (common practice). */
  private static final double MOST_DUTY = 0.8;

  /**
   * What the ignition must do.
   *
   * @param leastAdvanceDegrees degrees before TDC
   * @param mostAdvanceDegrees degrees before TDC, not less
   * @param dwellSeconds how long a coil charges, s
   * @param rpm highest speed, rev/min
   * @param crankingRpm speed on the starter, rev/min
   * @param coilFiresEveryDegrees 360 for wasted spark, 720 for one coil each, 720 over the number
   *     of cylinders for one coil in all
   */
  public record Demand(
      double leastAdvanceDegrees,
      double mostAdvanceDegrees,
      double dwellSeconds,
      double rpm,
      double crankingRpm,
      double coilFiresEveryDegrees) {

    /**
     * Checks the order of the advances and the signs.
     *
     * @throws IllegalArgumentException if one is wrong
     */
    public Demand {
      if (!(leastAdvanceDegrees <= mostAdvanceDegrees)
          || !(dwellSeconds > 0 && rpm > 0 && crankingRpm > 0 && coilFiresEveryDegrees > 0)) {
        throw new IllegalArgumentException(
            "the least advance comes before the most; dwell, speeds and coil angle must be"
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
   * All firings of a cycle.
   *
   * @param advanceDegrees advance, degrees BTDC
   * @param rpm speed, rev/min
   * @return in firing order
   */
  public List<FiringTeeth.Firing> at(double advanceDegrees, double rpm) {
    return teeth().plan(advanceDegrees, demand.dwellSeconds, rpm);
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
   * How far the crank turns from one spark of a coil to its next at one advance: of a coil for all
   * cylinders of an uneven engine the shortest way.
   *
   * @return degrees
   */
  public double betweenSparksDegrees() {
    int cylinders = order.order().size();
    boolean oneForAll = Math.rint(FiringOrder.CYCLE / demand.coilFiresEveryDegrees) == cylinders;
    return oneForAll ? shortestInterval() : demand.coilFiresEveryDegrees;
  }

  private double shortestInterval() {
    double[] due =
        order.order().stream().mapToDouble(order::degreesAfterCylinder1).sorted().toArray();
    double shortest = due[0] + FiringOrder.CYCLE - due[due.length - 1];
    for (int i = 1; i < due.length; i++) {
      shortest = Math.min(shortest, due[i] - due[i - 1]);
    }
    return shortest;
  }

  /**
   * What is left between a spark as late as can be and the coil's next as early as can be.
   *
   * @return degrees
   */
  public double beforeEarliestSparkDegrees() {
    return betweenSparksDegrees() - (demand.mostAdvanceDegrees - demand.leastAdvanceDegrees);
  }

  /**
   * How much of the time between a coil's sparks is dwell at the highest speed.
   *
   * @return 1 and more when there is no room
   */
  public double duty() {
    return dwellDegrees() / betweenSparksDegrees();
  }

  /**
   * Whether a coil has time for its dwell at the highest speed, before its earliest spark too.
   *
   * @return see the words
   */
  public Room room() {
    double share = dwellDegrees() / beforeEarliestSparkDegrees();
    boolean none = beforeEarliestSparkDegrees() <= 0 || share >= 1;
    return none ? Room.NONE : share > MOST_DUTY ? Room.LITTLE : Room.ENOUGH;
  }

  /**
   * Cylinders for which a gap of the wheel passes between the earliest charge and the latest spark.
   *
   * @param rpm speed, rev/min
   * @return in firing order
   */
  public List<Integer> metByGap(double rpm) {
    return metByGapFrom(demand.mostAdvanceDegrees + CrankAngle.turned(rpm, demand.dwellSeconds));
  }

  /**
   * Cylinders for which a gap passes while they may fire, where an older tooth times the spark
   * itself.
   *
   * @return in firing order
   */
  public List<Integer> firingInGap() {
    return metByGapFrom(demand.mostAdvanceDegrees);
  }

  private List<Integer> metByGapFrom(double earliestDegrees) {
    FiringTeeth teeth = teeth();
    return order.order().stream()
        .filter(c -> teeth.gapBetween(c, earliestDegrees, demand.leastAdvanceDegrees))
        .toList();
  }

  /**
   * How far before a spark the last tooth passes, at most, over all cylinders and advances.
   *
   * @return degrees
   */
  public double farthestToothDegrees() {
    FiringTeeth teeth = teeth();
    return order.order().stream()
        .mapToDouble(c -> teeth.farthest(c, demand.mostAdvanceDegrees, demand.leastAdvanceDegrees))
        .max()
        .orElse(0);
  }
}
