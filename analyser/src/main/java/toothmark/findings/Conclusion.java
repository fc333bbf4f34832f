package toothmark.findings;

import java.util.List;
import toothmark.units.Say;

/** The verdict in one or two sentences, and the one next step. */
final class Conclusion {

  private Conclusion() {}

  static String verdict(List<Finding> findings, Symptoms symptoms) {
    List<Finding> faults = of(findings, Severity.FAULT);
    List<Finding> watches = of(findings, Severity.WATCH);
    if (!faults.isEmpty()) {
      return faults.get(0).title() + also(faults.size() - 1, watches.size());
    }
    if (symptoms.crank().isEmpty()) {
      return watches.isEmpty()
          ? "The crank signal could not be decoded, and the capture does not show why."
          : watches.get(0).title();
    }
    String sound = "Nothing wrong was found" + over(symptoms) + ".";
    String watched =
        watches.isEmpty() ? "" : " One thing to keep an eye on: " + lower(watches.get(0).title());
    return sound + watched + unchecked(findings);
  }

  private static String over(Symptoms symptoms) {
    return symptoms
        .crank()
        .map(
            c ->
                " in "
                    + Say.number(c.turns().turned(), 0)
                    + " turns between "
                    + Say.number(c.turns().crank().speed().minRpm(), 0)
                    + " and "
                    + Say.rpm(c.turns().crank().speed().maxRpm()))
        .orElse("");
  }

  private static String also(int faults, int watches) {
    if (faults > 0) {
      return " There "
          + (faults == 1 ? "is one more fault" : "are " + faults + " more faults")
          + " below.";
    }
    return watches > 0 ? " Less certain findings stand below." : "";
  }

  private static String lower(String sentence) {
    return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
  }

  /** Nothing wrong is less than all well where an angle was taken on trust. */
  private static String unchecked(List<Finding> findings) {
    return findings.stream()
        .filter(f -> f.id().equals(TdcUnknownCheck.ID))
        .map(f -> " " + f.title())
        .findFirst()
        .orElse("");
  }

  static String nextStep(List<Finding> findings) {
    return findings.stream()
        .filter(f -> f.severity() != Severity.NOTE || f.id().equals(TdcUnknownCheck.ID))
        .map(Finding::nextTest)
        .findFirst()
        .orElse("");
  }

  private static List<Finding> of(List<Finding> findings, Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity).toList();
  }
}
