package toothmark.simulator;

/**
 * What the controller does above a speed.
 *
 * @param action how it holds the engine back
 * @param rpm speed above which it acts
 * @param hysteresisRpm how far below that it lets go
 * @param retardDegrees by how much a retarding limiter pulls the sparks back
 */
public record Limiter(Action action, double rpm, double hysteresisRpm, double retardDegrees) {
  /** How the engine is held back. */
  public enum Action {
    /** Not at all. */
    NONE,
    /** Coils are not charged. */
    CUT_SPARKS,
    /** Sparks come later. */
    RETARD
  }

  /** A controller without a limiter. */
  public static final Limiter NONE = new Limiter(Action.NONE, 0.0, 0.0, 0.0);

  /**
   * Cuts every spark above a speed until the engine has lost 150 rev/min.
   *
   * @param rpm speed, rev/min
   * @return the limiter
   */
  public static Limiter cuttingSparksAbove(double rpm) {
    return new Limiter(Action.CUT_SPARKS, rpm, 150.0, 0.0);
  }

  /**
   * Pulls every spark above a speed back.
   *
   * @param rpm speed, rev/min
   * @param degrees crank degrees
   * @return the limiter
   */
  public static Limiter retardingAbove(double rpm, double degrees) {
    return new Limiter(Action.RETARD, rpm, 50.0, degrees);
  }
}
