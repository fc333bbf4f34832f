package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import toothmark.rotation.SpeedTrace;
import toothmark.units.Say;

/** The verdict in one or two sentences, and the one next step. */
final class Conclusion {

  private static final Set<String> OF_THE_CAPTURE =
      Set.of(
          "capture-too-slow", "capture-too-short", "sensor-clipped", "probe-factor", "ac-coupled");

  private Conclusion() {}

  static String verdict(List<Finding> findings, Symptoms symptoms) {
    List<Finding> faults = of(findings, Severity.FAULT);
    List<Finding> watches = of(findings, Severity.WATCH);
    if (!faults.isEmpty()) {
      return limping(watches) + faults.get(0).title() + also(faults.size() - 1, watches.size());
    }
    if (symptoms.crank().isEmpty()) {
      return watches.isEmpty() ? Words.of("verdict.undecoded") : watches.get(0).title();
    }
    List<String> said = new ArrayList<>();
    said.add(found(watches.isEmpty() ? "sound" : "no-fault", symptoms.crank().get().turns()));
    if (!watches.isEmpty()) {
      said.add(Words.of("verdict.watch", lower(watches.get(0).title())));
    }
    unchecked(findings).map(Finding::title).ifPresent(said::add);
    return String.join(" ", said);
  }

  /** A capture that limps is named before anything is blamed on the engine. */
  private static String limping(List<Finding> watches) {
    return watches.stream()
        .filter(f -> OF_THE_CAPTURE.contains(f.id()))
        .findFirst()
        .map(f -> Words.of("verdict.limps", lower(f.title())) + " ")
        .orElse("");
  }

  private static String found(String what, Turns turns) {
    SpeedTrace speed = turns.crank().speed();
    return Words.of(
        "verdict." + what,
        Say.number(turns.turned(), 0),
        Say.number(speed.minRpm(), 0),
        Say.rpm(speed.maxRpm()));
  }

  private static String also(int faults, int watches) {
    if (faults > 0) {
      return " " + Words.count(faults, "verdict.more");
    }
    return watches > 0 ? " " + Words.of("verdict.less") : "";
  }

  private static String lower(String sentence) {
    return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
  }

  /** Nothing wrong is less than all well where an angle was taken on trust. */
  private static Optional<Finding> unchecked(List<Finding> findings) {
    return findings.stream().filter(f -> f.id().equals(TdcUnknownCheck.ID)).findFirst();
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
