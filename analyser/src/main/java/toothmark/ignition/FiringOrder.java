package toothmark.ignition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * When each cylinder reaches its firing top dead centre, relative to cylinder 1, in a four-stroke
 * cycle of 720 degrees.
 */
public final class FiringOrder {

  /** Degrees in a four-stroke cycle. */
  public static final double CYCLE = 720.0;

  private final List<Integer> order;
  private final double[] degreesByCylinder;

  private FiringOrder(List<Integer> order, double[] degreesByCylinder) {
    this.order = order;
    this.degreesByCylinder = degreesByCylinder;
  }

  /**
   * An engine that fires at even intervals.
   *
   * @param order each cylinder from 1 once, in the order in which they fire; 1 to 24 cylinders
   * @return the firing order
   * @throws IllegalArgumentException if a cylinder is missing or named twice
   */
  public static FiringOrder even(List<Integer> order) {
    double[] degrees = new double[order.size()];
    for (int i = 0; i < degrees.length; i++) {
      degrees[i] = i * CYCLE / degrees.length;
    }
    return of(order, degrees);
  }

  /**
   * An engine that fires at stated angles.
   *
   * @param order each cylinder from 1 once, in the order in which they fire; 1 to 24 cylinders
   * @param degrees firing top dead centre of each in that order, degrees, rising from 0 or more and
   *     below 720
   * @return the firing order, with cylinder 1 at 0
   * @throws IllegalArgumentException if a cylinder is missing or named twice, or the angles do not
   *     rise
   */
  public static FiringOrder of(List<Integer> order, double... degrees) {
    checkOrder(order);
    checkAngles(order, degrees);
    double[] byCylinder = new double[order.size()];
    double first = degrees[order.indexOf(1)];
    for (int i = 0; i < degrees.length; i++) {
      double d = degrees[i] - first;
      byCylinder[order.get(i) - 1] = d < 0 ? d + CYCLE : d;
    }
    return new FiringOrder(List.copyOf(order), byCylinder);
  }

  private static void checkOrder(List<Integer> order) {
    List<Integer> sorted = new ArrayList<>(order);
    Collections.sort(sorted);
    for (int i = 0; i < sorted.size(); i++) {
      if (sorted.get(i) != i + 1) {
        throw new IllegalArgumentException(
            "the firing order " + order + " must name each cylinder from 1 on once");
      }
    }
    if (sorted.isEmpty() || sorted.size() > 24) {
      throw new IllegalArgumentException(
          "a firing order needs 1 to 24 cylinders, got " + sorted.size());
    }
  }

  private static void checkAngles(List<Integer> order, double[] degrees) {
    double last = Double.NEGATIVE_INFINITY;
    for (double d : degrees) {
      if (!(d >= 0 && d < CYCLE && d > last)) {
        throw new IllegalArgumentException(
            "the firing angles "
                + Arrays.toString(degrees)
                + " must rise from 0 and stay below 720");
      }
      last = d;
    }
    if (degrees.length != order.size()) {
      throw new IllegalArgumentException(
          "there are " + order.size() + " cylinders but " + degrees.length + " firing angles");
    }
  }

  /**
   * The cylinders in the order in which they fire.
   *
   * @return as given
   */
  public List<Integer> order() {
    return order;
  }

  /**
   * Firing top dead centre of a cylinder.
   *
   * @param cylinder from 1
   * @return degrees after that of cylinder 1, in [0, 720)
   * @throws IllegalArgumentException if the engine has no such cylinder
   */
  public double degreesAfterCylinder1(int cylinder) {
    if (cylinder < 1 || cylinder > degreesByCylinder.length) {
      throw new IllegalArgumentException(
          "there is no cylinder " + cylinder + " in the firing order " + order);
    }
    return degreesByCylinder[cylinder - 1];
  }
}
