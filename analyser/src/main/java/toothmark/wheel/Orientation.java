package toothmark.wheel;

/** Which way round the sensor is wired. */
public enum Orientation {
  /** The edge that the controller times is the tooth centre. */
  NORMAL("normal"),
  /**
   * The edge that the controller times is the slot centre: leads swapped, or the wrong edge set.
   */
  REVERSED("reversed"),
  /** It cannot be seen: the capture holds edges only, or a logic signal. */
  UNKNOWN(null);

  private final String label;

  Orientation(String label) {
    this.label = label;
  }

  /**
   * The name in the results.
   *
   * @return lower case, or null when it cannot be seen
   */
  public String label() {
    return label;
  }
}
