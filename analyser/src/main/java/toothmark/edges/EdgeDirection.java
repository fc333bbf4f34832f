package toothmark.edges;

/** Which way the signal goes at an edge. */
public enum EdgeDirection {
  /**
   * From high to low; of a variable-reluctance wave, the fall through zero at a maximum of flux.
   */
  FALLING,
  /**
   * From low to high; of a variable-reluctance wave, the rise through zero at a minimum of flux.
   */
  RISING;

  /**
   * The other direction.
   *
   * @return RISING for FALLING and the reverse
   */
  public EdgeDirection opposite() {
    return this == FALLING ? RISING : FALLING;
  }
}
