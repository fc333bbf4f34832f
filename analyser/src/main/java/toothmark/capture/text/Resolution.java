package toothmark.capture.text;

/** Finds the step of the clock behind a list of times: their greatest common divisor. */
final class Resolution {

  private static final double LARGEST_WHOLE = 1L << 53;

  private Resolution() {}

  /**
   * The greatest step of which all times are multiples, counted from the first.
   *
   * @param writtenStep step in which the times were written, s; 0 when not known
   * @return s; 0 when not known
   */
  static double of(DoubleList times, double writtenStep) {
    if (!(writtenStep > 0) || times.size() < 2) {
      return writtenStep;
    }
    long divisor = 0;
    for (int i = 1; i < times.size() && divisor != 1; i++) {
      double steps = (times.get(i) - times.get(0)) / writtenStep;
      if (steps > LARGEST_WHOLE) {
        return writtenStep;
      }
      divisor = commonDivisor(Math.round(steps), divisor);
    }
    double rate = Math.rint(1 / writtenStep);
    boolean whole = Math.abs(rate * writtenStep - 1) < 1e-12;
    return whole ? divisor / rate : divisor * writtenStep;
  }

  private static long commonDivisor(long a, long b) {
    long x = a;
    long y = b;
    while (y != 0) {
      long rest = x % y;
      x = y;
      y = rest;
    }
    return x;
  }
}
