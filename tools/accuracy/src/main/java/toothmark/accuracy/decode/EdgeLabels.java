package toothmark.accuracy.decode;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import toothmark.accuracy.decode.EdgeCases.Edge;
import toothmark.accuracy.decode.EdgeCases.EdgeCase;
import toothmark.simulator.ToothPassing;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * Every single edge judged: a tooth must bear its number, a stray none.
 *
 * <p>Harder than {@link LabelScore}, and not all of it can be won: a stray that falls nearer to a
 * tooth's place than the tooth's own edge is taken for it by anybody. How many do is counted with
 * the true motion known, as {@code unavoidable}.
 *
 * @param edges counted, the first one and a half turns left out
 * @param wrong of those
 * @param unavoidable of those
 */
record EdgeLabels(long edges, long wrong, long unavoidable) {

  static final EdgeLabels NOTHING = new EdgeLabels(0, 0, 0);

  static EdgeLabels of(EdgeCase edgeCase, Decoding decoding) {
    Map<Double, Integer> found = new HashMap<>();
    decoding.decoded().ifPresent(d -> collect(d.events(), found));
    List<ToothPassing> teeth = edgeCase.capture().truth().teeth();
    int from = edgeCase.capture().scenario().wheel().pattern().teeth() * 3 / 2;
    int to = teeth.size() - from / 3;
    double begin = teeth.get(Math.min(from, teeth.size() - 1)).seconds();
    double end = teeth.get(Math.max(0, to - 1)).seconds();
    long edges = 0;
    long wrong = 0;
    for (Edge e : edgeCase.edges()) {
      if (e.seconds() >= begin && e.seconds() < end) {
        int truth = e.passing() < 0 ? 0 : teeth.get(e.passing()).tooth();
        edges++;
        wrong += found.getOrDefault(e.seconds(), 0) == truth ? 0 : 1;
      }
    }
    return new EdgeLabels(edges, wrong, confusable(edgeCase, begin, end));
  }

  private static void collect(ToothEvents events, Map<Double, Integer> found) {
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) == ToothKind.SEEN) {
        found.put(events.time(i), events.tooth(i));
      }
    }
  }

  /** Strays nearer to a tooth's true place than its own edge; each makes two labels wrong. */
  private static long confusable(EdgeCase edgeCase, double begin, double end) {
    List<ToothPassing> teeth = edgeCase.capture().truth().teeth();
    long count = 0;
    List<Edge> edges = edgeCase.edges();
    for (int i = 1; i + 1 < edges.size(); i++) {
      Edge e = edges.get(i);
      if (e.passing() < 0 || e.seconds() < begin || e.seconds() >= end) {
        continue;
      }
      double place = teeth.get(e.passing()).seconds();
      double own = Math.abs(e.seconds() - place);
      boolean before =
          edges.get(i - 1).passing() < 0 && Math.abs(edges.get(i - 1).seconds() - place) < own;
      boolean after =
          edges.get(i + 1).passing() < 0 && Math.abs(edges.get(i + 1).seconds() - place) < own;
      count += before || after ? 2 : 0;
    }
    return count;
  }

  EdgeLabels plus(EdgeLabels other) {
    return new EdgeLabels(
        edges + other.edges, wrong + other.wrong, unavoidable + other.unavoidable);
  }
}
