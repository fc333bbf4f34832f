package toothmark.findings;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import toothmark.units.Interval;
import toothmark.units.Say;

/** A wire or plug opens now and then: the whole signal goes. */
final class IntermittentConnectionCheck extends CrankCheck {

  /** Of a running engine whose signal goes and comes back: nothing else does so. */
  private static final double SILENCE_PROBABILITY = 0.97;

  @Override
  public String id() {
    return Losses.OPEN;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<LostTeeth> own = crank.losses().of(id());
    List<Interval> silences = crank.losses().silences();
    if (own.isEmpty() && silences.isEmpty()) {
      return Outcome.quiet();
    }
    int teeth =
        own.stream().mapToInt(LostTeeth::absent).sum()
            + silences.stream().mapToInt(s -> due(s, crank.turns())).sum();
    List<Interval> spans =
        Stream.concat(own.stream().map(LostTeeth::during), silences.stream())
            .sorted(Comparator.comparingDouble(Interval::startInclusive))
            .toList();
    double shortest = spans.stream().mapToDouble(Interval::seconds).min().orElse(0);
    double longest = spans.stream().mapToDouble(Interval::seconds).max().orElse(0);
    double probability =
        crank.losses().part(id()).map(p -> p.probability()).orElse(SILENCE_PROBABILITY);
    boolean proven =
        !silences.isEmpty() || teeth >= 3 && crank.losses().part(id()).orElseThrow().gain() > 3;
    boolean alike = longest < 1.1 * shortest;
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(silences.isEmpty() ? probability : SILENCE_PROBABILITY);
    String times = Words.times(spans.size());
    if (alike) {
      d.saw(teeth, "dead", times, Say.seconds(longest), Words.spans(spans));
    } else {
      d.saw(
          teeth,
          "dead-for",
          times,
          Say.seconds(shortest),
          Say.seconds(longest),
          Words.spans(spans));
    }
    return Outcome.fires(
        d.ratherThan("damaged-tooth")
            .ratherThan("weak-sensor")
            .caution("turning", "unplug")
            .picture(Picture.SYNC)
            .where(spans));
  }

  /** About how many teeth would have come meanwhile, at the speed after it. */
  private static int due(Interval silence, Turns turns) {
    return (int) Math.rint(silence.seconds() / turns.pitchSeconds(silence.endExclusive()));
  }
}
