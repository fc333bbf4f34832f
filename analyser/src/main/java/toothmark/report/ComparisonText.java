package toothmark.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import toothmark.compare.Change;
import toothmark.compare.Comparison;
import toothmark.compare.RecordedExamination;
import toothmark.compare.RecordedFinding;
import toothmark.timing.TdcSource;
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
    counted(c).ifPresent(lines::add);
    lines.add("");
    int head = lines.size();
    c.gone().forEach(f -> lines.add(finding("gone", f)));
    c.come().forEach(f -> lines.add(finding("new", f)));
    c.graver().forEach(f -> lines.add(finding("graver", f) + regraded(c, f)));
    c.milder().forEach(f -> lines.add(finding("milder", f) + regraded(c, f)));
    c.stayed().forEach(f -> lines.add(finding("stays", f)));
    if (lines.size() > head) {
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
   * From what advance is counted on both sides, where that matters.
   *
   * @param c the comparison
   * @return a sentence or two; empty where both count from top dead centre by the same source, or
   *     one has no advance
   */
  public static Optional<String> counted(Comparison c) {
    RecordedExamination before = c.before();
    RecordedExamination after = c.after();
    if (before.tdcSource().isEmpty() || after.tdcSource().isEmpty()) {
      return Optional.empty();
    }
    if (before.countsFromToldAngle() && after.countsFromToldAngle()) {
      return Optional.of(
          "Advance is counted from the angle that the controller is told, on both sides: what the"
              + " wheel itself is off does not show in it.");
    }
    if (before.countsFromToldAngle() || after.countsFromToldAngle()) {
      return Optional.of(
          "Advance is counted from the angle that the controller is told in the "
              + (before.countsFromToldAngle() ? "earlier" : "later")
              + " and from top dead centre in the "
              + (before.countsFromToldAngle() ? "later" : "earlier")
              + ": a changed offset may be what the wheel itself is off.");
    }
    return before.tdcSource().equals(after.tdcSource())
        ? Optional.empty()
        : Optional.of(
            "Top dead centre is known from "
                + words(before)
                + " in the earlier and from "
                + words(after)
                + " in the later.");
  }

  private static String words(RecordedExamination e) {
    return Arrays.stream(TdcSource.values())
        .filter(s -> e.tdcSource().equals(Optional.of(s.label())))
        .map(TdcSource::words)
        .findFirst()
        .orElse("another source");
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
