package toothmark.timing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A column of a controller log, by the names that controllers give it. */
enum LogColumn {
  TIME(
      "Time",
      List.of("time", "timestamp", "zeit", "temps", "tiempo", "t", "seconds", "clock"),
      Map.of("s", 1.0, "sec", 1.0, "ms", 1e-3, "us", 1e-6, "µs", 1e-6, "μs", 1e-6, "min", 60.0)),
  RPM(
      "RPM",
      List.of("rpm", "engine speed", "engine rpm", "speed", "drehzahl", "n"),
      Map.of("rpm", 1.0, "rev/min", 1.0, "1/min", 1.0, "min-1", 1.0, "krpm", 1e3, "rps", 60.0)),
  ADVANCE(
      "Advance",
      List.of(
          "advance",
          "ignition advance",
          "spark advance",
          "timing advance",
          "ignition timing",
          "ignition angle",
          "spark angle",
          "spark timing",
          "timing",
          "ignition",
          "zündwinkel"),
      Map.of("deg", 1.0, "°", 1.0, "degrees", 1.0, "deg btdc", 1.0, "°btdc", 1.0, "btdc", 1.0)),
  /** In the unit of the ignition table, which only its owner knows. */
  LOAD(
      "Load",
      List.of(
          "load",
          "engine load",
          "map",
          "manifold pressure",
          "manifold absolute pressure",
          "tps",
          "throttle",
          "throttle position"),
      Map.of());

  private final String label;
  private final List<String> names;
  private final Map<String, Double> units;

  LogColumn(String label, List<String> names, Map<String, Double> units) {
    this.label = label;
    this.names = names;
    this.units = units;
  }

  /**
   * How well a heading names this column.
   *
   * @return 0 for the first of its names, rising; -1 when it names another
   */
  int rank(String heading) {
    return names.indexOf(bare(heading));
  }

  /** The plainest of its names. */
  String label() {
    return label;
  }

  /** What to multiply a value by to have seconds, rev/min or degrees; 1 without a known unit. */
  double factor(String heading, String unitCell) {
    String fromHeading = unit(heading);
    return units.getOrDefault(fromHeading.isEmpty() ? clean(unitCell) : fromHeading, 1.0);
  }

  private static String bare(String heading) {
    String h = clean(heading);
    int bracket = bracket(h);
    return (bracket < 0 ? h : h.substring(0, bracket)).replace('_', ' ').strip();
  }

  private static String unit(String heading) {
    String h = clean(heading);
    int bracket = bracket(h);
    return bracket < 0 ? "" : clean(h.substring(bracket));
  }

  private static int bracket(String text) {
    return Arrays.stream(new int[] {text.indexOf('('), text.indexOf('[')})
        .filter(i -> i > 0)
        .min()
        .orElse(-1);
  }

  private static String clean(String text) {
    String t = text.strip().toLowerCase(Locale.ROOT);
    return bracket(" " + t) == 1 ? t.substring(1).replaceAll("[)\\]]$", "").strip() : t;
  }
}
