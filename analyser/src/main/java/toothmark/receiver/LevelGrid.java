package toothmark.receiver;

import java.util.List;

/**
 * Many inputs with two fixed levels at once, each as {@link ThresholdInput}.
 *
 * <p>No input changes while the voltage stays between the lowest level that would arm one and the
 * highest that would give an edge, so most samples cost two comparisons however many inputs there
 * are. It passes no edges on; each pair counts its own.
 */
final class LevelGrid implements InputStage {

  /**
   * One input.
   *
   * @param upper level above which it is armed, V
   * @param lower level whose fall is the edge, V; not above the upper
   * @param heard told of every edge
   */
  record Pair(double upper, double lower, EdgeTally heard) {}

  private final Pair[] pairs;
  private final boolean[] armed;
  private double arms;
  private double fires;
  private double timeBefore;
  private double before;

  LevelGrid(List<Pair> all) {
    pairs = all.toArray(Pair[]::new);
    armed = new boolean[pairs.length];
    watch();
  }

  @Override
  public Outcome next(double seconds, double volts) {
    if (volts > arms || volts <= fires) {
      change(seconds, volts);
      watch();
    }
    timeBefore = seconds;
    before = volts;
    return Outcome.QUIET;
  }

  private void change(double seconds, double volts) {
    for (int i = 0; i < pairs.length; i++) {
      double lower = pairs[i].lower;
      if (armed[i] && volts <= lower) {
        double share = (before - lower) / (before - volts);
        pairs[i].heard.add(timeBefore + share * (seconds - timeBefore));
        armed[i] = false;
      }
      armed[i] = armed[i] || volts > pairs[i].upper;
    }
  }

  /** Between which levels nothing changes. */
  private void watch() {
    arms = Double.POSITIVE_INFINITY;
    fires = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < pairs.length; i++) {
      if (armed[i]) {
        fires = Math.max(fires, pairs[i].lower);
      } else {
        arms = Math.min(arms, pairs[i].upper);
      }
    }
  }

  @Override
  public double edgeSeconds() {
    throw new IllegalStateException("it passes no edges on");
  }
}
