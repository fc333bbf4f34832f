package toothmark.simulator.file;

/** Writes numbers with an exponent, quickly. */
final class Exponents {
  private Exponents() {}

  static void append(StringBuilder out, double value, int decimals) {
    double size = Math.abs(value);
    int exponent = 0;
    if (size > 0.0) {
      exponent = (int) Math.floor(StrictMath.log10(size));
      double scaled = size / StrictMath.pow(10.0, exponent);
      double half = 0.5 * StrictMath.pow(10.0, -decimals);
      if (scaled + half >= 10.0) {
        exponent++;
      }
      size /= StrictMath.pow(10.0, exponent);
    }
    Decimals.append(out, value < 0.0 ? -size : size, decimals);
    out.append(exponent < 0 ? "E-" : "E+");
    out.append(Math.abs(exponent) < 10 ? "0" : "").append(Math.abs(exponent));
  }
}
