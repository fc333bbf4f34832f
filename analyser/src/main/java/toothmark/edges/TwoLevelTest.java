package toothmark.edges;

/** Whether samples stand at two levels, as those of a switch do, or wander, as those of a wave. */
final class TwoLevelTest {

  /** Share of samples that a switching signal spends at its levels. */
  private static final double AT_LEVELS = 0.85;

  /** Share that it may spend in the middle half, on its way. */
  private static final double ON_THE_WAY = 0.05;

  /** Levels nearer together than this many standard deviations of noise are one level. */
  private static final double APART = 8.0;

  private TwoLevelTest() {}

  static boolean passes(SampleStatistics s) {
    LogicLevels levels = LogicLevels.of(s.histogram);
    double span = levels.span();
    double middle = s.histogram.shareBetween(levels.low() + span / 4, levels.high() - span / 4);
    return span > APART * s.noise()
        && span > 0
        && levels.share(s.histogram) >= AT_LEVELS
        && middle <= ON_THE_WAY;
  }
}
