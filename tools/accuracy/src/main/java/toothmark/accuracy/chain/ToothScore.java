package toothmark.accuracy.chain;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * Teeth of the result against teeth of the truth.
 *
 * <p>A true tooth is right when the nearest tooth of the result, seen or missing, lies within half
 * a pitch and bears its number. The first one and a half turns and the last half turn do not count.
 *
 * @param teeth that gave an edge
 * @param right of those
 * @param rightSeen of those, reported as seen
 * @param lost teeth that gave no edge
 * @param lostRight of those, located
 * @param excess teeth of the result beyond those of the truth
 * @param offsets number of errors of instants behind the two sums
 * @param offsetSum of errors of instants, degrees
 * @param offsetSquares sum of their squares
 */
record ToothScore(
    long teeth,
    long right,
    long rightSeen,
    long lost,
    long lostRight,
    long excess,
    long offsets,
    double offsetSum,
    double offsetSquares) {

  static final ToothScore NOTHING = new ToothScore(0, 0, 0, 0, 0, 0, 0, 0, 0);

  private record Passing(double seconds, int tooth, double degrees, boolean lost) {}

  private record Named(int tooth, boolean seen) {}

  static ToothScore of(Path truthTeeth, Path resultTeeth, int slots, boolean fromFirstEdge)
      throws IOException {
    List<Passing> truth = truth(truthTeeth, fromFirstEdge);
    TreeMap<Double, Named> named = new TreeMap<>();
    for (NamedCsvRecord row : CsvRows.read(resultTeeth)) {
      if (!row.getField("tooth").isEmpty()) {
        boolean seen = row.getField("kind").equals("seen");
        int tooth = Integer.parseInt(row.getField("tooth"));
        named.put(CsvRows.number(row, "time_s"), new Named(tooth, seen));
      }
    }
    int turn = (int) truth.stream().mapToInt(Passing::tooth).distinct().count();
    int from = turn * 3 / 2;
    int to = truth.size() - turn / 2;
    if (to <= from) {
      return NOTHING;
    }
    ToothScore score = NOTHING;
    for (int i = from; i < to; i++) {
      score = score.plus(one(truth, i, named, 360.0 / slots));
    }
    int inside =
        named.subMap(truth.get(from).seconds, true, truth.get(to - 1).seconds, true).size();
    return score.plus(new ToothScore(0, 0, 0, 0, 0, Math.max(0, inside - (to - from)), 0, 0, 0));
  }

  private static List<Passing> truth(Path file, boolean fromFirstEdge) throws IOException {
    List<Passing> all = new ArrayList<>();
    double zero = 0;
    for (NamedCsvRecord row : CsvRows.read(file)) {
      double t = CsvRows.number(row, "time");
      zero = all.isEmpty() && fromFirstEdge ? t : zero;
      all.add(
          new Passing(
              t - zero,
              Integer.parseInt(row.getField("tooth")),
              CsvRows.number(row, "theta"),
              row.getField("missing").equals("1")));
    }
    return all;
  }

  private static ToothScore one(
      List<Passing> truth, int i, TreeMap<Double, Named> named, double pitchDegrees) {
    Passing t = truth.get(i);
    Passing before = truth.get(i - 1);
    double degreesPerSecond = (t.degrees - before.degrees) / (t.seconds - before.seconds);
    double reach = 0.5 * pitchDegrees / Math.max(1e-6, Math.abs(degreesPerSecond));
    Double at = nearest(named, t.seconds);
    boolean right =
        at != null && Math.abs(at - t.seconds) < reach && named.get(at).tooth == t.tooth;
    if (t.lost) {
      return new ToothScore(0, 0, 0, 1, right ? 1 : 0, 0, 0, 0, 0);
    }
    if (!right || !named.get(at).seen) {
      return new ToothScore(1, right ? 1 : 0, 0, 0, 0, 0, 0, 0, 0);
    }
    double degrees = (at - t.seconds) * degreesPerSecond;
    return new ToothScore(1, 1, 1, 0, 0, 0, 1, degrees, degrees * degrees);
  }

  static <T> Double nearest(TreeMap<Double, T> map, double time) {
    Double below = map.floorKey(time);
    Double above = map.ceilingKey(time);
    return below == null || (above != null && above - time < time - below) ? above : below;
  }

  ToothScore plus(ToothScore o) {
    return new ToothScore(
        teeth + o.teeth,
        right + o.right,
        rightSeen + o.rightSeen,
        lost + o.lost,
        lostRight + o.lostRight,
        excess + o.excess,
        offsets + o.offsets,
        offsetSum + o.offsetSum,
        offsetSquares + o.offsetSquares);
  }

  /** Share of teeth with an edge that got their number. */
  double recall() {
    return teeth == 0 ? Double.NaN : right / (double) teeth;
  }

  /** Scatter of the instants about their mean: a constant shift is a matter of the edge chosen. */
  double scatterDegrees() {
    double mean = offsetSum / offsets;
    return offsets == 0
        ? Double.NaN
        : Math.sqrt(Math.max(0, offsetSquares / offsets - mean * mean));
  }
}
