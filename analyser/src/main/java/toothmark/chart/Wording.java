package toothmark.chart;

import toothmark.units.Say;

/** Small words of the answers. */
final class Wording {

  private Wording() {}

  /** A number with what it counts. */
  static String count(long n, String one, String many) {
    return (n == 0 ? "no" : Say.count(n)) + " " + (n == 1 ? one : many);
  }
}
