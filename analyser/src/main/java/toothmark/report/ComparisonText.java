package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.compare.Change;
import toothmark.compare.Comparison;
import toothmark.compare.RecordedExamination;
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
    lines.add(verdict(c));
    counted(c).ifPresent(lines::add);
    lines.add("");
    int head = lines.size();
    c.gone().forEach(f -> lines.add(finding("compare.line.gone", f)));
    c.come().forEach(f -> lines.add(finding("compare.line.new", f)));
    c.graver().forEach(f -> lines.add(finding("compare.line.graver", f) + regraded(c, f)));
    c.milder().forEach(f -> lines.add(finding("compare.line.milder", f) + regraded(c, f)));
    c.stayed().forEach(f -> lines.add(finding("compare.line.stays", f)));
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

  /**
   * The comparison in a sentence or two.
   *
   * @param c the comparison
   * @return faults mended, faults that are new, and what changed of the rest
   */
  public static String verdict(Comparison c) {
    List<String> parts = new ArrayList<>();
    if (!c.before().wheel().equals(c.after().wheel())) {
      parts.add(Wording.of("compare.wheels", wheel(c.before()), wheel(c.after())));
    }
    boolean sound = faults(c.before().findings()) + faults(c.after().findings()) == 0;
    parts.add(
        sound
            ? Wording.of("compare.sound")
            : Wording.of(
                "compare.faults",
                Wording.count(faults(c.gone()), "compare.gone"),
                Wording.count(faults(c.come()), "compare.come")));
    add(parts, "compare.became", faults(c.graver()));
    add(
        parts,
        "compare.eased",
        faults(c.milder().stream().map(f -> c.before().gravest(f.id()).orElseThrow()).toList()));
    add(parts, "compare.stay", faults(c.stayed()));
    return String.join(" ", parts);
  }

  private static String wheel(RecordedExamination e) {
    return e.wheel().orElseGet(() -> Wording.of("compare.wheel.none"));
  }

  private static void add(List<String> parts, String key, long n) {
    if (n > 0) {
      parts.add(Wording.count(n, key));
    }
  }

  private static long faults(List<RecordedFinding> findings) {
    return findings.stream().filter(f -> f.severity().equals("fault")).count();
  }

  private static String finding(String key, RecordedFinding f) {
    return String.format(
        "%-6s %-6s %s", Wording.of(key), Wording.severity(f.severity()), f.title());
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
    if (before.countsFromToldAngle() || after.countsFromToldAngle()) {
      boolean both = before.countsFromToldAngle() && after.countsFromToldAngle();
      String which = before.countsFromToldAngle() ? "earlier" : "later";
      return Optional.of(Wording.of("compare.told." + (both ? "both" : which)));
    }
    return before.tdcSource().equals(after.tdcSource())
        ? Optional.empty()
        : Optional.of(Wording.of("compare.sources", words(before), words(after)));
  }

  private static String words(RecordedExamination e) {
    return e.tdcSource()
        .flatMap(s -> Wording.find("source." + s))
        .orElseGet(() -> Wording.of("source.other"));
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
        .map(then -> " " + Wording.of("compare.was", Wording.severity(then.severity())))
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
    return value.map(v -> Say.interval(v, unit)).orElseGet(() -> Wording.of("compare.unmeasured"));
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
          Wording.of(
              "compare.changed", Say.interval(change.difference().orElseThrow(), change.unit()));
      case WITHIN_UNCERTAINTY -> Wording.of("compare.within");
      case NOT_COMPARABLE -> Wording.of("compare.incomparable");
    };
  }
}
