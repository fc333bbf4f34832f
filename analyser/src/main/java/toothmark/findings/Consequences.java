package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which findings follow from which others, so that one cause does not appear as many.
 *
 * <p>A finding is left out when a graver or equal one explains it. The pairs are reasoning, each
 * with its reason in {@code docs/methods/diagnosis.md}; what can occur beside its explainer is not
 * listed.
 */
final class Consequences {

  private static final Map<String, Set<String>> EXPLAINS =
      Map.ofEntries(
          Map.entry(
              "no-crank-signal",
              Set.of("coil-silent", "coil-misses", "intermittent-connection", "capture-too-short")),
          Map.entry(
              "capture-too-short",
              Set.of(
                  "wheel-uncertain",
                  "wheel-without-reference",
                  "coil-silent",
                  "coil-misses",
                  "timing-scatter",
                  "tdc-mark-unsteady",
                  "wheel-misaligned")),
          Map.entry(
              "capture-too-slow",
              Set.of(
                  "timing-scatter",
                  "uneven-teeth",
                  "random-noise-pickup",
                  "periodic-interference",
                  "ignition-interference",
                  "input-stage-dropout",
                  "gap-noise",
                  "unexplained-sync-losses")),
          Map.entry(
              "sensor-polarity-reversed",
              Set.of("gap-noise", "input-stage-dropout", "unexplained-sync-losses", "weak-signal")),
          Map.entry("wheel-pattern-mismatch", Set.of("wheel-uncertain", "unexplained-sync-losses")),
          Map.entry("wheel-slip", Set.of("wheel-misaligned", "timing-step")),
          Map.entry("wrong-timing-edge", Set.of("uneven-teeth", "random-noise-pickup")),
          Map.entry(
              "intermittent-connection",
              Set.of("input-stage-dropout", "gap-noise", "wheel-uncertain")),
          Map.entry(
              "weak-signal",
              Set.of("gap-noise", "starter-noise", "input-stage-dropout", "threshold-lag")),
          Map.entry("damaged-tooth", Set.of("uneven-teeth", "input-stage-dropout")),
          Map.entry("wheel-run-out", Set.of("uneven-teeth", "wheel-oval")),
          Map.entry("ignition-interference", Set.of("gap-noise", "input-stage-dropout")),
          Map.entry(
              "random-noise-pickup", Set.of("gap-noise", "input-stage-dropout", "starter-noise")),
          Map.entry(
              "periodic-interference",
              Set.of(
                  "gap-noise",
                  "extra-wheel-feature",
                  "input-stage-dropout",
                  "uneven-teeth",
                  "timing-scatter")),
          Map.entry("sensor-bracket", Set.of("timing-scatter", "uneven-teeth")),
          Map.entry("crank-twist", Set.of("timing-scatter", "uneven-teeth")),
          Map.entry("ground-shift", Set.of("uneven-teeth")),
          Map.entry("speed-prediction", Set.of("timing-scatter")),
          Map.entry(
              "spark-cut-limiter", Set.of("coil-misses", "uneven-cylinders", "dwell-unsteady")),
          Map.entry("timing-retard-limiter", Set.of("timing-step")),
          Map.entry("coil-misses", Set.of("uneven-cylinders", "dwell-unsteady")),
          Map.entry(
              "coil-silent",
              Set.of("uneven-cylinders", "coil-misses", "dwell-unsteady", "double-sparks")),
          Map.entry("double-sparks", Set.of("dwell-unsteady")),
          Map.entry("engine-stops", Set.of("slow-cranking")));

  /** What follows only where it is not proven on its own. */
  private static final Map<String, Set<String>> EXPLAINS_UNPROVEN =
      Map.ofEntries(
          Map.entry("capture-too-slow", Set.of("extra-wheel-feature", "damaged-tooth")),
          Map.entry("coil-misses", Set.of("wheel-run-out", "wheel-oval", "uneven-teeth")),
          Map.entry("coil-silent", Set.of("wheel-run-out", "wheel-oval", "uneven-teeth")),
          Map.entry("uneven-cylinders", Set.of("wheel-run-out", "wheel-oval")),
          Map.entry("spark-cut-limiter", Set.of("wheel-run-out", "wheel-oval")),
          Map.entry("wheel-slip", Set.of("wheel-run-out", "wheel-oval")),
          Map.entry(
              "weak-signal",
              Set.of(
                  "random-noise-pickup",
                  "periodic-interference",
                  "ignition-interference",
                  "extra-wheel-feature")),
          Map.entry("intermittent-connection", Set.of("random-noise-pickup", "crank-twist")),
          Map.entry(
              "ignition-interference", Set.of("random-noise-pickup", "periodic-interference")),
          Map.entry("sensor-polarity-reversed", Set.of("random-noise-pickup")),
          Map.entry("ground-shift", Set.of("ignition-interference")));

  private Consequences() {}

  /** The findings that no other explains, in their order. */
  static List<Finding> explain(List<Finding> findings) {
    List<Finding> left = new ArrayList<>();
    for (Finding f : findings) {
      boolean explained = findings.stream().anyMatch(by -> explains(by, f));
      if (!explained) {
        left.add(f);
      }
    }
    return left;
  }

  /**
   * The finding that a cause is told by.
   *
   * @param cause id of a finding, said or left out
   * @param said ids of the findings said, in their order
   * @return the cause itself where it is said, else the first that explains it; empty text when
   *     none does
   */
  static String toldBy(String cause, List<String> said) {
    if (said.contains(cause)) {
      return cause;
    }
    return said.stream()
        .filter(
            by ->
                EXPLAINS.getOrDefault(by, Set.of()).contains(cause)
                    || EXPLAINS_UNPROVEN.getOrDefault(by, Set.of()).contains(cause))
        .findFirst()
        .orElse("");
  }

  private static boolean explains(Finding by, Finding f) {
    boolean graver = by.severity().compareTo(f.severity()) <= 0 || by.severity() == Severity.NOTE;
    boolean unproven = f.severity() == Severity.WATCH && by != f;
    return graver && EXPLAINS.getOrDefault(by.id(), Set.of()).contains(f.id())
        || unproven && EXPLAINS_UNPROVEN.getOrDefault(by.id(), Set.of()).contains(f.id());
  }
}
