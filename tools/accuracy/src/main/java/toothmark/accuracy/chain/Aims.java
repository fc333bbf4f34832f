package toothmark.accuracy.chain;

import java.util.List;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Held;
import toothmark.accuracy.Table;

/** What is asked of the whole chain. */
final class Aims {

  private static final double ADVANCE_DEGREES = 0.10;
  private static final double DELAY_MICROSECONDS = 5.0;

  private Aims() {}

  static void state(Section section, List<CaseScore> scores) {
    long agree =
        scores.stream()
            .filter(s -> s.sync().filter(c -> c.said() != c.again()).isPresent())
            .count();
    section.target("sync counts that differ", "none", Long.toString(agree), Held.when(agree == 0));
    SparkScore sparks =
        scores.stream().map(CaseScore::sparks).reduce(SparkScore.NOTHING, SparkScore::plus);
    section.target(
        "sparks found",
        "all",
        sparks.found() + " of " + sparks.sparks(),
        Held.when(sparks.found() == sparks.sparks()));
    section.target(
        "advance, rms",
        "≤ " + ADVANCE_DEGREES + "°",
        Table.number(sparks.advanceRmsDegrees(), 3) + "°",
        Held.when(sparks.advanceRmsDegrees() <= ADVANCE_DEGREES));
    delay(section, scores);
  }

  private static void delay(Section section, List<CaseScore> scores) {
    List<CaseScore.Error> delays = scores.stream().flatMap(s -> s.delay().stream()).toList();
    if (delays.isEmpty()) {
      return;
    }
    double worst = delays.stream().mapToDouble(e -> Math.abs(e.error())).max().getAsDouble();
    section.target(
        "delay, worst",
        "≤ " + DELAY_MICROSECONDS + " µs",
        Table.number(worst, 1) + " µs of " + delays.size(),
        Held.when(worst <= DELAY_MICROSECONDS));
  }
}
