package toothmark.accuracy.decode;

import java.util.Optional;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.LineChart;
import toothmark.accuracy.Section.Worst;
import toothmark.simulator.SimulatedCapture;

/**
 * Labels of one capture, or of many together, by the analyser and by the two plain decoders.
 *
 * @param name of the case; of several, of the first
 * @param wheelWrong captures whose wheel the analyser did not name
 * @param ours the analyser's
 * @param told the analyser's with a job sheet that names the wheel
 * @param follower the textbook follower's; nothing for a wheel without one gap
 * @param gapRatio the gap-ratio decoder's; likewise
 */
record LabelOutcome(
    CaseName name,
    int wheelWrong,
    LabelScore ours,
    LabelScore told,
    LabelScore follower,
    LabelScore gapRatio) {

  static LabelOutcome of(CaseName name, SimulatedCapture capture, Decoding decoding) {
    boolean oneGap = capture.scenario().wheel().pattern().name().matches("\\d+-\\d+");
    LabelScore ours = decoding.ours();
    return new LabelOutcome(
        name,
        decoding.naming().right() ? 0 : 1,
        ours,
        decoding.naming().right() ? ours : decoding.told().ours(),
        oneGap ? decoding.follower() : LabelScore.NOTHING,
        oneGap ? decoding.gapRatio() : LabelScore.NOTHING);
  }

  LabelOutcome plus(LabelOutcome o) {
    return new LabelOutcome(
        name,
        wheelWrong + o.wheelWrong,
        ours.plus(o.ours),
        told.plus(o.told),
        follower.plus(o.follower),
        gapRatio.plus(o.gapRatio));
  }

  void plot(LineChart chart, String wheel, double x) {
    chart.point("analyser, " + wheel, x, ours.drawn());
    chart.point("follower", x, follower.drawn());
    chart.point("gap ratio", x, gapRatio.drawn());
  }

  /** Empty when all is right. */
  Optional<Worst> worst() {
    if (wheelWrong == 0 && ours.wrong() == 0) {
      return Optional.empty();
    }
    String what = ours.wrong() + " of " + ours.teeth() + " labels wrong";
    double badness = wheelWrong + (ours.teeth() == 0 ? 0 : ours.wrong() / (double) ours.teeth());
    return Optional.of(new Worst(name, badness, wheelWrong > 0 ? "wheel wrong, " + what : what));
  }
}
