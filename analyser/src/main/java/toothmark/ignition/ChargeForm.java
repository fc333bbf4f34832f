package toothmark.ignition;

/** The form of a coil's charge, by its current. */
public enum ChargeForm {
  /** It ramps up until it breaks. */
  RAMP("ramp"),
  /** It ramps up and then stands still: the driver limits it, which is meant. */
  LIMITED("limited"),
  /** It turns up late: the core saturates, and the coil only grows hot. */
  KNEE("knee");

  private final String label;

  ChargeForm(String label) {
    this.label = label;
  }

  /**
   * What it is called in data.
   *
   * @return lower case
   */
  public String label() {
    return label;
  }
}
