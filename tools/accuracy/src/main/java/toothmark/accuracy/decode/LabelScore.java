package toothmark.accuracy.decode;

import java.util.List;
import toothmark.accuracy.Table;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.ToothPassing;

/**
 * How many teeth got the right number.
 *
 * <p>A tooth is right when the named instant nearest to it lies within half a pitch and bears its
 * number. The first one and a half turns and the last half turn do not count, so that a decoder
 * that has to find its feet is not judged by it.
 *
 * @param teeth that gave an edge
 * @param wrong of those
 * @param lost teeth that gave none, through a fault
 * @param lostWrong of those
 */
record LabelScore(long teeth, long wrong, long lost, long lostWrong) {

  static final LabelScore NOTHING = new LabelScore(0, 0, 0, 0);

  static LabelScore of(SimulatedCapture capture, Labels labels) {
    List<ToothPassing> all = capture.truth().teeth();
    double pitch = capture.scenario().wheel().pattern().pitchDegrees();
    int turn = capture.scenario().wheel().pattern().teeth();
    long[] counts = new long[4];
    for (int i = turn * 3 / 2; i < all.size() - turn / 2; i++) {
      ToothPassing t = all.get(i);
      ToothPassing a = all.get(i - 1);
      double degreesPerSecond = (t.crankDegrees() - a.crankDegrees()) / (t.seconds() - a.seconds());
      double reach = 0.5 * pitch / Math.max(1e-6, Math.abs(degreesPerSecond));
      boolean right = labels.near(t.seconds(), reach) == t.tooth();
      int kind = t.outcome() == ToothPassing.Outcome.SEEN ? 0 : 2;
      counts[kind]++;
      counts[kind + 1] += right ? 0 : 1;
    }
    return new LabelScore(counts[0], counts[1], counts[2], counts[3]);
  }

  LabelScore plus(LabelScore other) {
    return new LabelScore(
        teeth + other.teeth, wrong + other.wrong, lost + other.lost, lostWrong + other.lostWrong);
  }

  /** In tables. */
  String share() {
    return Table.share(wrong, teeth);
  }

  /** In charts with a logarithmic axis, where no error is drawn as one in all. */
  double drawn() {
    return teeth == 0 ? Double.NaN : Math.max(1.0, wrong) / teeth;
  }
}
