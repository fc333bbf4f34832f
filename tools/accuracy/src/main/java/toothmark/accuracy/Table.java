package toothmark.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A table in Markdown. */
public final class Table {

  private final List<String> lines = new ArrayList<>();

  /**
   * An empty table. The first column is text, the others are numbers.
   *
   * @param heads heads of the columns
   */
  public Table(String... heads) {
    lines.add(line(List.of(heads)));
    List<String> rule = new ArrayList<>();
    for (int i = 0; i < heads.length; i++) {
      rule.add(i == 0 ? ":--" : "--:");
    }
    lines.add("|" + String.join("|", rule) + "|");
  }

  /**
   * Adds a row.
   *
   * @param cells as many as heads
   */
  public void row(String... cells) {
    lines.add(line(List.of(cells)));
  }

  private static String line(List<String> cells) {
    return "| " + String.join(" | ", cells) + " |";
  }

  /**
   * A number with some digits after the point.
   *
   * @param value finite, or NaN where nothing was measured
   * @param digits after the point
   * @return its text, a dash for NaN
   */
  public static String number(double value, int digits) {
    return Double.isNaN(value) ? "–" : String.format(Locale.ROOT, "%." + digits + "f", value);
  }

  /**
   * A share with its number of trials behind it: zero of a thousand is not zero.
   *
   * @param hits how often
   * @param trials of how many
   * @return two significant digits; below one of the trials {@code < 1/trials}; a dash without
   *     trials
   */
  public static String share(long hits, long trials) {
    if (trials == 0) {
      return "–";
    }
    if (hits == 0) {
      return "< " + String.format(Locale.ROOT, "%.0e", 1.0 / trials).replace("e-0", "e-");
    }
    double share = hits / (double) trials;
    return share >= 0.01
        ? String.format(Locale.ROOT, "%.3f", share)
        : String.format(Locale.ROOT, "%.1e", share).replace("e-0", "e-");
  }

  @Override
  public String toString() {
    return String.join("\n", lines) + "\n";
  }
}
