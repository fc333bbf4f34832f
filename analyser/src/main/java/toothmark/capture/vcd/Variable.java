package toothmark.capture.vcd;

/**
 * A declared variable.
 *
 * @param scope names of the scopes around it, joined by points
 * @param name reference name, without the range of bits
 * @param range what it is of a vector
 * @param values where its values go; aliases share them
 */
record Variable(String scope, String name, Range range, Values values) {

  /**
   * Bits of a vector.
   *
   * @param highest index of the leftmost bit
   * @param lowest index of the rightmost bit
   */
  record Range(int highest, int lowest) {

    /** Index of a bit, counted from the rightmost. */
    int index(int fromRight) {
      return highest >= lowest ? lowest + fromRight : lowest - fromRight;
    }
  }
}
