package toothmark.ignition;

/** Which level of a logic drive means that the coil charges. */
public enum ChargingLevel {
  /** High while charging, spark at the fall. */
  HIGH,
  /** Low while charging, spark at the rise. */
  LOW
}
