package toothmark.accuracy.decode;

import java.util.List;
import java.util.Locale;
import toothmark.simulator.Scenario;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.ToothPassing;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelIdentification;

/** All there is to say of one decoding, for whoever looks for the cause of an error. */
final class Explanation {

  private static final int ERRORS_SHOWN = 40;

  private Explanation() {}

  static String of(SimulatedCapture capture, Decoding decoding) {
    StringBuilder out = new StringBuilder();
    Scenario s = capture.scenario();
    line(out, "case %s, seed %d", s.name(), s.seed());
    line(out, "wheel %s, %s, damaged %s", name(s), s.wheel().errors(), s.wheel().damaged());
    line(out, "sensor %s", s.sensor());
    line(out, "recorder %s", s.recorder());
    line(out, "speed %s", s.speed());
    line(
        out,
        "truth: %d teeth, %.0f to %.0f rev/min",
        capture.truth().teeth().size(),
        capture.truth().speed().minRpm(),
        capture.truth().speed().maxRpm());
    line(
        out,
        "edges: %d falling, %d rising, %s",
        decoding.naming().edges().falling().size(),
        decoding.naming().edges().rising().size(),
        decoding.naming().edges().quality());
    decoding
        .naming()
        .search()
        .found()
        .ifPresentOrElse(
            f -> wheel(out, f), () -> line(out, "%s", decoding.naming().search().reason()));
    decoding
        .decoded()
        .ifPresent(
            d ->
                line(
                    out,
                    "decoded: %d seen, %d missing, %d stray, undecided %s",
                    d.events().count(ToothKind.SEEN),
                    d.events().count(ToothKind.MISSING),
                    d.events().count(ToothKind.STRAY),
                    d.undecided()));
    line(out, "analyser %s", decoding.ours());
    errors(out, capture, decoding);
    return out.toString();
  }

  private static String name(Scenario s) {
    return s.wheel().pattern().name();
  }

  private static void line(StringBuilder out, String format, Object... values) {
    out.append(String.format(Locale.ROOT, format, values)).append('\n');
  }

  private static void wheel(StringBuilder out, WheelIdentification found) {
    line(
        out,
        "found: %s (%.3f), teeth at %s edges, %s",
        found.pattern(),
        found.confidence(),
        found.toothEdge(),
        found.orientation());
    found.alternatives().forEach(a -> line(out, "  or %s (%.3g)", a.pattern(), a.confidence()));
    found.evidence().forEach(e -> line(out, "  %s", e));
  }

  private static void errors(StringBuilder out, SimulatedCapture capture, Decoding decoding) {
    Labels labels = decoding.labels();
    List<ToothPassing> teeth = capture.truth().teeth();
    int shown = 0;
    for (int i = 1; i < teeth.size() && shown < ERRORS_SHOWN; i++) {
      ToothPassing t = teeth.get(i);
      int label = labels.near(t.seconds(), 0.5 * (t.seconds() - teeth.get(i - 1).seconds()));
      if (label != t.tooth()) {
        line(
            out,
            "  at %.6f s tooth %d of revolution %d (%s) was labelled %s",
            t.seconds(),
            t.tooth(),
            t.revolution(),
            t.outcome().name().toLowerCase(Locale.ROOT),
            label == 0 ? "not at all" : Integer.toString(label));
        shown++;
      }
    }
  }
}
