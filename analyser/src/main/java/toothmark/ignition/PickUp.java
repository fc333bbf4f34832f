package toothmark.ignition;

/** How a coil's firing was picked up. */
public enum PickUp {
  /** The drive to an igniter: one level while charging, spark at its end. */
  LOGIC("logic"),
  /**
   * The coil's switched terminal: near ground while charging, flyback of hundreds of volts at the
   * spark.
   */
  PRIMARY_VOLTAGE("primary-voltage"),
  /** A current clamp round the primary lead: a ramp while charging, which breaks at the spark. */
  CURRENT_CLAMP("current-clamp"),
  /** An inductive clamp round the plug lead: one burst for one spark, no charging to be seen. */
  INDUCTIVE_CLAMP("inductive-clamp");

  private final String label;

  PickUp(String label) {
    this.label = label;
  }

  /**
   * The name in the job sheet.
   *
   * @return lower case, hyphenated
   */
  public String label() {
    return label;
  }
}
