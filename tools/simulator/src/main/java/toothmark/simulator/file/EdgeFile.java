package toothmark.simulator.file;

import java.util.List;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Trace;

/** Writes timing edges as times or as periods. */
final class EdgeFile {
  private static final double COUNTS_PER_SECOND = 2e6;

  private EdgeFile() {}

  static String text(SimulatedCapture capture, Dialect dialect) {
    List<Double> edges = ((Trace.Edges) capture.crank()).edges();
    return switch (dialect) {
      case PERIODS -> "tooth period (us)\n" + periods(edges, 1e6);
      case PERIODS_IN_COUNTS ->
          "# clock,2000000,Hz\ntooth period (counts)\n" + periods(edges, COUNTS_PER_SECOND);
      default -> "edge time (s)\n" + times(edges);
    };
  }

  private static String times(List<Double> edges) {
    StringBuilder out = new StringBuilder();
    for (double edge : edges) {
      Decimals.append(out, edge, 7);
      out.append('\n');
    }
    return out.toString();
  }

  private static String periods(List<Double> edges, double unitsPerSecond) {
    StringBuilder out = new StringBuilder();
    for (int i = 1; i < edges.size(); i++) {
      long now = Math.round(edges.get(i) * unitsPerSecond);
      long before = Math.round(edges.get(i - 1) * unitsPerSecond);
      out.append(now - before).append('\n');
    }
    return out.toString();
  }
}
