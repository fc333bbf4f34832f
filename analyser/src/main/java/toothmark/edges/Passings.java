package toothmark.edges;

/** Where maxima and minima of flux in turn were seen to pass, each by itself. */
final class Passings {

  /** Where the voltage is zero, samples. */
  final double[] position;

  /** Standard uncertainty of that, samples. */
  final double[] uncertainty;

  /** Samples to each side that were used; 0 where a burst or a hole spoils the wave. */
  final int[] reach;

  /** What the voltage stands off by besides the wave's own offset, V. */
  final double[] offset;

  /** Swing of flux from each to the next, V samples. */
  final double[] swing;

  /** From the half height of the lobe before to that of the one behind, samples; 0 if unknown. */
  final long[] width;

  Passings(int size) {
    width = new long[size];
    swing = new double[size];
    position = new double[size];
    uncertainty = new double[size];
    reach = new int[size];
    offset = new double[size];
  }

  int size() {
    return position.length;
  }
}
