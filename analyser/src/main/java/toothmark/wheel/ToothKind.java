package toothmark.wheel;

/** What the decoding made of an instant. */
public enum ToothKind {
  /** An edge that is a tooth. */
  SEEN("seen"),
  /** A tooth of the wheel that gave no edge; its time is interpolated. */
  MISSING("missing"),
  /** An edge that is no tooth. */
  STRAY("stray");

  private final String label;

  ToothKind(String label) {
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
