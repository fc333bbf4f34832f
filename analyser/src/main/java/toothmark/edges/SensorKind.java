package toothmark.edges;

/** What kind of signal the crank channel carries. */
public enum SensorKind {
  /**
   * A coil and magnet: a wave whose amplitude grows with speed; a tooth centre is a zero crossing.
   */
  VARIABLE_RELUCTANCE("variable-reluctance"),
  /** Two levels: a Hall or optical switch, or any conditioned signal. */
  HALL("hall"),
  /** The capture holds instants only; the kind of sensor cannot be seen. */
  EDGES_ONLY("edges-only");

  private final String label;

  SensorKind(String label) {
    this.label = label;
  }

  /**
   * The name in job sheet and results.
   *
   * @return lower case, hyphenated
   */
  public String label() {
    return label;
  }
}
