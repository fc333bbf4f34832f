package toothmark.findings;

/** How much a finding matters. */
public enum Severity {
  /** Mend it. */
  FAULT("fault"),
  /** Not proven, or harmless today. */
  WATCH("watch"),
  /** Explained and normal, or worth knowing. */
  NOTE("note");

  private final String label;

  Severity(String label) {
    this.label = label;
  }

  /**
   * The name in the results.
   *
   * @return lower case
   */
  public String label() {
    return label;
  }
}
