package toothmark.timing;

/** What tells top dead centre of cylinder 1, from the best to the least trusted. */
public enum TdcSource {
  /** A channel of the capture that rises at top dead centre. */
  MARK_CHANNEL("mark-channel", "a mark channel in the capture"),
  /** The touches of a piston stop, against what is read with tooth 1 at the sensor. */
  PISTON_STOP("piston-stop", "piston-stop readings"),
  /** Readings with a timing light, less what the controller itself does. */
  TIMING_LIGHT("timing-light", "timing-light readings");

  private final String label;
  private final String words;

  TdcSource(String label, String words) {
    this.label = label;
    this.words = words;
  }

  /**
   * What it is called in data.
   *
   * @return lower case, words joined by hyphens
   */
  public String label() {
    return label;
  }

  /**
   * What it is called in a sentence.
   *
   * @return in lower case
   */
  public String words() {
    return words;
  }
}
