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
    return Outcome.fires(
        Draft.of(
                id(),
                proven ? Severity.FAULT : Severity.WATCH,
                "The crank signal drops out: a wire or plug is opening.")
            .probability(crank.losses().part(id()).orElseThrow().probability())
            .saw(
                "The signal goes dead "
                    + Words.times(own.size())
                    + ", for "
                    + length(shortest, longest)
                    + ", and "
                    + Words.count(teeth, "tooth is", "teeth are")
                    + " lost: "
                    + Words.spans(spans)
                    + ".")
            .ratherThan("A damaged tooth is lost at the same place every turn; these are anywhere.")
            .ratherThan("A weak sensor loses teeth where the crank is slow; these go at any speed.")
            .next("Wiggle the sensor plug and its wires while watching the trace, hot and cold.")
            .caution(Cautions.TURNING + " " + Cautions.UNPLUG)
            .picture(Picture.SYNC)
            .where(spans));
  }

  private static String length(double shortest, double longest) {
    return longest < 1.1 * shortest
        ? "about " + Say.seconds(longest)
        : Say.seconds(shortest) + " to " + Say.seconds(longest);
  }
}
