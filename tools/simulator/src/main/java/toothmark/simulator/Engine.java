package toothmark.simulator;

import java.util.List;

/**
 * A four-stroke engine with even firing intervals.
 *
 * @param firingOrder cylinder numbers in the order in which they fire; starts with cylinder 1
 * @param displacementLitres swept volume of all cylinders together
 * @param compressionRatio geometric
 * @param inertiaKgM2 of everything that turns with the running crank; an engaged starter doubles it
 * @param frictionNm mean torque lost to friction
 * @param lastCompression pressure that the last cylinder of the order keeps of what it should have,
 *     0 to 1
 */
public record Engine(
    List<Integer> firingOrder,
    double displacementLitres,
    double compressionRatio,
    double inertiaKgM2,
    double frictionNm,
    double lastCompression) {

  /** Copies the order and checks that the engine can exist. */
  public Engine {
    firingOrder = List.copyOf(firingOrder);
    if (firingOrder.isEmpty() || firingOrder.get(0) != 1) {
      throw new IllegalArgumentException("firing order " + firingOrder + " does not start with 1");
    }
    if (!(displacementLitres > 0 && compressionRatio > 1 && inertiaKgM2 > 0 && frictionNm >= 0)) {
      throw new IllegalArgumentException(
          "engine with a size, ratio or inertia that is not positive");
    }
  }

  /**
   * An engine whose cylinders are all sound.
   *
   * @param firingOrder cylinder numbers in the order in which they fire
   * @param displacementLitres swept volume of all
   * @param compressionRatio geometric
   * @param inertiaKgM2 of everything that turns
   * @param frictionNm mean torque lost to friction
   */
  public Engine(
      List<Integer> firingOrder,
      double displacementLitres,
      double compressionRatio,
      double inertiaKgM2,
      double frictionNm) {
    this(firingOrder, displacementLitres, compressionRatio, inertiaKgM2, frictionNm, 1.0);
  }

  /**
   * The same with a last cylinder that leaks.
   *
   * @param share of the pressure that it keeps, 0 to 1
   * @return the engine
   */
  public Engine withLastCompression(double share) {
    return new Engine(
        firingOrder, displacementLitres, compressionRatio, inertiaKgM2, frictionNm, share);
  }

  /**
   * A usual engine of 1 to 8 cylinders: 0.45 litres a cylinder, compression ratio 9.5.
   *
   * @param cylinders 1 to 6, or 8
   * @return the engine
   */
  public static Engine ofCylinders(int cylinders) {
    List<Integer> order =
        switch (cylinders) {
          case 1 -> List.of(1);
          case 2 -> List.of(1, 2);
          case 3 -> List.of(1, 3, 2);
          case 4 -> List.of(1, 3, 4, 2);
          case 5 -> List.of(1, 2, 4, 5, 3);
          case 6 -> List.of(1, 5, 3, 6, 2, 4);
          case 8 -> List.of(1, 8, 4, 3, 6, 5, 7, 2);
          default -> throw new IllegalArgumentException(cylinders + " cylinders are not modelled");
        };
    double litres = 0.45 * cylinders;
    return new Engine(order, litres, 9.5, 0.10 + 0.0125 * cylinders, 12.0 * litres);
  }

  /**
   * The number of cylinders.
   *
   * @return their numbers
   */
  public int cylinders() {
    return firingOrder.size();
  }

  /**
   * Crank degrees from one firing TDC to the next.
   *
   * @return 720 over the number of cylinders
   */
  public double firingIntervalDegrees() {
    return 720.0 / cylinders();
  }
}
