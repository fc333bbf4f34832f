package toothmark.accuracy.chain;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import toothmark.accuracy.Table;

/** Scores of many cases in two tables: signal and timing. */
final class ScoreTables {

  private final Table signal;
  private final Table timing;

  ScoreTables(String firstColumn) {
    signal =
        new Table(
            firstColumn,
            "cases",
            "failed",
            "wheel",
            "polarity",
            "labels",
            "worst",
            "as seen",
            "excess",
            "lost teeth located",
            "scatter, °",
            "sync counts agree");
    timing =
        new Table(
            firstColumn,
            "sparks found",
            "excess",
            "advance rms, °",
            "alignment rms, °",
            "worst, °",
            "in 2 u",
            "delay rms, µs",
            "worst, µs",
            "in 2 u",
            "findings made",
            "false faults");
  }

  Table signal() {
    return signal;
  }

  Table timing() {
    return timing;
  }

  void row(String name, List<CaseScore> scores) {
    List<CaseScore> ran = scores.stream().filter(s -> s.failure().isEmpty()).toList();
    ToothScore teeth =
        ran.stream().map(CaseScore::teeth).reduce(ToothScore.NOTHING, ToothScore::plus);
    signal.row(
        name,
        Integer.toString(scores.size()),
        Integer.toString(scores.size() - ran.size()),
        right(ran, CaseScore::wheelRight),
        right(ran, CaseScore::polarityRight),
        Table.number(teeth.recall(), 5),
        Table.number(
            ran.stream()
                .filter(s -> s.teeth().teeth() > 0)
                .mapToDouble(s -> s.teeth().recall())
                .min()
                .orElse(Double.NaN),
            4),
        Table.number(teeth.rightSeen() / (double) teeth.teeth(), 5),
        Long.toString(teeth.excess()),
        of(teeth.lostRight(), teeth.lost()),
        Table.number(rms(ran), 4),
        of(
            ran.stream()
                .filter(s -> s.sync().filter(c -> c.said() == c.again()).isPresent())
                .count(),
            ran.stream().filter(s -> s.sync().isPresent()).count()));
    timingRow(name, ran);
  }

  private void timingRow(String name, List<CaseScore> ran) {
    SparkScore sparks =
        ran.stream().map(CaseScore::sparks).reduce(SparkScore.NOTHING, SparkScore::plus);
    List<CaseScore.Error> alignment = ran.stream().flatMap(s -> s.alignment().stream()).toList();
    List<CaseScore.Error> delay = ran.stream().flatMap(s -> s.delay().stream()).toList();
    int wanted = ran.stream().mapToInt(s -> s.findings().wanted()).sum();
    int missed = ran.stream().mapToInt(s -> s.findings().missed().size()).sum();
    timing.row(
        name,
        of(sparks.found(), sparks.sparks()),
        Long.toString(sparks.excess()),
        Table.number(sparks.advanceRmsDegrees(), 3),
        Table.number(rmsOf(alignment), 3),
        Table.number(worst(alignment), 3),
        of(alignment.stream().filter(CaseScore.Error::covered).count(), alignment.size()),
        Table.number(rmsOf(delay), 2),
        Table.number(worst(delay), 2),
        of(delay.stream().filter(CaseScore.Error::covered).count(), delay.size()),
        of(wanted - missed, wanted),
        Integer.toString(ran.stream().mapToInt(s -> s.findings().falseFaults().size()).sum()));
  }

  private static String right(
      List<CaseScore> scores, Function<CaseScore, Optional<Boolean>> judged) {
    List<Boolean> all = scores.stream().flatMap(s -> judged.apply(s).stream()).toList();
    return of(all.stream().filter(r -> r).count(), all.size());
  }

  private static String of(long part, long all) {
    return all == 0 ? "–" : part + "/" + all;
  }

  private static double rms(List<CaseScore> scores) {
    return Math.sqrt(
        scores.stream()
            .mapToDouble(s -> s.teeth().scatterDegrees())
            .filter(d -> !Double.isNaN(d))
            .map(d -> d * d)
            .average()
            .orElse(Double.NaN));
  }

  private static double rmsOf(List<CaseScore.Error> errors) {
    return Math.sqrt(
        errors.stream().mapToDouble(e -> e.error() * e.error()).average().orElse(Double.NaN));
  }

  private static double worst(List<CaseScore.Error> errors) {
    return errors.stream().mapToDouble(e -> Math.abs(e.error())).max().orElse(Double.NaN);
  }
}
