package toothmark.simulator.file;

/** Writes numbers with a fixed count of decimals, quickly; halves are rounded away from zero. */
final class Decimals {
  private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10};

  private Decimals() {}

  static void append(StringBuilder out, double value, int decimals) {
    append(out, value, decimals, '.');
  }

  static void append(StringBuilder out, double value, int decimals, char mark) {
    if (!(Math.abs(value) * POWERS[decimals] < 9e15)) {
      throw new IllegalArgumentException(value + " has no " + decimals + " exact decimals");
    }
    long units = (long) (Math.abs(value) * POWERS[decimals] + 0.5);
    if (value < 0.0 && units != 0) {
      out.append('-');
    }
    long whole = (long) POWERS[decimals];
    out.append(units / whole);
    if (decimals == 0) {
      return;
    }
    out.append(mark);
    long rest = units % whole;
    for (long digit = whole / 10; digit > 0; digit /= 10) {
      out.append((char) ('0' + rest / digit % 10));
    }
  }

  static String of(double value, int decimals) {
    StringBuilder out = new StringBuilder();
    append(out, value, decimals);
    return out.toString();
  }
}
