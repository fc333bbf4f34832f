package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.compare.Change;
import toothmark.compare.Comparison;
import toothmark.compare.RecordedFinding;
import toothmark.units.Measured;
import toothmark.units.Say;

/** A comparison in plain lines, for a terminal; its phrases serve the page as well. */
public final class ComparisonText {

  private ComparisonText() {}

  /**
   * Says what changed.
   *
   * @param c the comparison
   * @return lines: the verdict, findings that went, stayed and came, and each figure
   */
  public static List<String> of(Comparison c) {
    List<String> lines = new ArrayList<>();
    lines.add(c.verdict());
    lines.add("");
    c.gone().forEach(f -> lines.add(finding("gone", f)));
    c.come().forEach(f -> lines.add(finding("new", f)));
    c.graver().forEach(f -> lines.add(finding("graver", f) + regraded(c, f)));
    c.milder().forEach(f -> lines.add(finding("milder", f) + regraded(c, f)));
    c.stayed().forEach(f -> lines.add(finding("stays", f)));
    if (lines.size() > 2) {
      lines.add("");
    }
    for (Change change : c.changes()) {
      lines.add(
          String.format(
              "%-22s  %s → %s: %s",
              change.name(),
              value(change.before(), change.unit()),
              value(change.after(), change.unit()),
              outcome(change)));
    }
    return lines.stream().map(ScreenLines::plainSpaces).toList();
  }

  private static String finding(String how, RecordedFinding f) {
    return String.format("%-6s %-6s %s", how, f.severity(), f.title());
  }

  /**
   * What a finding was before.
   *
   * @param c the comparison
   * @param f a finding of the later
   * @return to stand behind its title; empty where it was not there or is as grave as before
   */
  public static String regraded(Comparison c, RecordedFinding f) {
    return c.before()
        .gravest(f.id())
        .filter(then -> !then.severity().equals(f.severity()))
        .map(then -> " (was a " + then.severity() + ")")
        .orElse("");
  }

  /**
   * A figure on one side.
   *
   * @param value empty where it was not measured
   * @param unit its unit
   * @return with its interval
   */
  public static String value(Optional<Measured> value, String unit) {
    return value.map(v -> Say.interval(v, unit)).orElse("not measured");
  }

  /**
   * What can be said of a change.
   *
   * @param change a figure before and after
   * @return a few words
   */
  public static String outcome(Change change) {
    return switch (change.verdict()) {
      case CHANGED ->
          "changed by " + Say.interval(change.difference().orElseThrow(), change.unit());
      case WITHIN_UNCERTAINTY -> "no change beyond the uncertainty";
      case NOT_COMPARABLE -> "cannot be compared";
    };
  }
}
