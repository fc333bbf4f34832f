package toothmark.accuracy.decode;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import toothmark.accuracy.Table;
import toothmark.accuracy.decode.EdgeCases.Edge;
import toothmark.accuracy.decode.EdgeCases.EdgeCase;
import toothmark.simulator.ToothPassing;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * How often labels of about the same stated confidence are right (a reliability table: DeGroot and
 * Fienberg, The Statistician 32 (1983) 12-22, doi:10.2307/2987588).
 *
 * @param classes by rising confidence, from {@link #FROM}
 */
record Reliability(List<Class> classes) {

  private static final double[] FROM = {0, 0.5, 0.8, 0.95, 0.99, 0.999, 0.9999};

  static final Reliability NOTHING =
      new Reliability(IntStream.range(0, FROM.length).mapToObj(i -> Class.NOTHING).toList());

  /**
   * Labels of one class.
   *
   * @param labels how many
   * @param confidence sum of what was stated
   * @param right how many are
   */
  record Class(long labels, double confidence, long right) {

    static final Class NOTHING = new Class(0, 0, 0);

    Class plus(Class o) {
      return new Class(labels + o.labels, confidence + o.confidence, right + o.right);
    }
  }

  /** Of a capture whose wheel was named right; the first one and a half turns do not count. */
  static Reliability of(EdgeCase edgeCase, Decoding decoding) {
    if (decoding.decoded().isEmpty() || !decoding.naming().right()) {
      return NOTHING;
    }
    List<ToothPassing> teeth = edgeCase.capture().truth().teeth();
    int first = edgeCase.capture().scenario().wheel().pattern().teeth() * 3 / 2;
    double begin = teeth.get(Math.min(first, teeth.size() - 1)).seconds();
    Map<Double, Integer> truth = new HashMap<>();
    for (Edge e : edgeCase.edges()) {
      truth.put(e.seconds(), e.passing() < 0 ? 0 : teeth.get(e.passing()).tooth());
    }
    Class[] classes = NOTHING.classes.toArray(Class[]::new);
    ToothEvents events = decoding.decoded().get().events();
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) != ToothKind.MISSING && events.time(i) >= begin) {
        double p = events.confidence(i);
        boolean right = truth.getOrDefault(events.time(i), -1) == events.tooth(i);
        int k = classOf(p);
        classes[k] = classes[k].plus(new Class(1, p, right ? 1 : 0));
      }
    }
    return new Reliability(List.of(classes));
  }

  private static int classOf(double confidence) {
    int k = 0;
    while (k + 1 < FROM.length && confidence >= FROM[k + 1]) {
      k++;
    }
    return k;
  }

  Reliability plus(Reliability o) {
    return new Reliability(
        IntStream.range(0, FROM.length)
            .mapToObj(i -> classes.get(i).plus(o.classes.get(i)))
            .toList());
  }

  Table table() {
    Table table = new Table("stated confidence from", "labels", "wrong, as stated", "wrong");
    for (int i = 0; i < FROM.length; i++) {
      Class c = classes.get(i);
      double doubt = c.labels == 0 ? Double.NaN : 1 - c.confidence / c.labels;
      table.row(
          Double.toString(FROM[i]),
          Long.toString(c.labels),
          Double.isNaN(doubt) ? "–" : String.format(java.util.Locale.ROOT, "%.1e", doubt),
          Table.share(c.labels - c.right, c.labels));
    }
    return table;
  }
}
