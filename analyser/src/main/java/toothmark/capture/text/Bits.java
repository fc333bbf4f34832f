package toothmark.capture.text;

/** Bits of the words of a logic bus. */
final class Bits {

  private Bits() {}

  /** How many bits the largest word needs, at least 1. */
  static int count(double largest) {
    return Math.max(1, 64 - Long.numberOfLeadingZeros((long) largest));
  }

  /** A bit of a word, 0 or 1. */
  static double of(double word, int bit) {
    return (long) word >> bit & 1;
  }
}
