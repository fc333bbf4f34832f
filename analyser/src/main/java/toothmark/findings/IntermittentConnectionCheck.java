package toothmark.findings;

import java.util.List;
import toothmark.units.Interval;
import toothmark.units.Say;

/** A wire or plug opens now and then: the whole signal goes. */
final class IntermittentConnectionCheck extends CrankCheck {

  @Override
  public String id() {
    return Losses.OPEN;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<LostTeeth> own = crank.losses().of(id());
    if (own.isEmpty()) {
      return Outcome.quiet();
    }
    int teeth = own.stream().mapToInt(LostTeeth::absent).sum();
    double shortest = own.stream().mapToDouble(l -> l.during().seconds()).min().orElse(0);
    double longest = own.stream().mapToDouble(l -> l.during().seconds()).max().orElse(0);
    boolean proven = teeth >= 3 && crank.losses().part(id()).orElseThrow().gain() > 3;
    List<Interval> spans = own.stream().map(LostTeeth::during).toList();
    boolean alike = longest < 1.1 * shortest;
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(crank.losses().part(id()).orElseThrow().probability());
    String times = Words.times(own.size());
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
}
