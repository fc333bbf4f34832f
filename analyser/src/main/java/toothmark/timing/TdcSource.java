package toothmark.timing;

/** What tells top dead centre of cylinder 1, from the best to the least trusted. */
public enum TdcSource {
  /** A channel of the capture that rises at top dead centre. */
  MARK_CHANNEL("mark-channel"),
  /** The touches of a piston stop, against what is read with tooth 1 at the sensor. */
  PISTON_STOP("piston-stop"),
  /** Readings with a timing light, less what the controller itself does. */
  TIMING_LIGHT("timing-light");

  private final String label;

  TdcSource(String label) {
    this.label = label;
  }

  /**
   * What it is called in data.
   *
   * @return lower case, words joined by hyphens
   */
  public String label() {
    return label;
  }
}
