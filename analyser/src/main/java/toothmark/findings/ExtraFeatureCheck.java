package toothmark.findings;

import java.util.List;
import toothmark.units.Say;

/** Something on the wheel that is no tooth gives an edge: a bolt head, a keyway, swarf. */
final class ExtraFeatureCheck extends CrankCheck {

  /** Share of turns in which it must show to be proven. */
  private static final double SHARE = 0.3;

  @Override
  public String id() {
    return StraySources.FEATURE;
  }

  /** Without a coil, sparks at a fixed advance would come at one angle as well. */
  private static final double UNSEEN = 0.6;

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<Stray> own = crank.strays().of(id());
    if (own.isEmpty()) {
      return Outcome.quiet();
    }
    double turns = Math.max(1, crank.turns().turned());
    boolean sparksSeen = !seen.coils().isEmpty();
    boolean proven =
        sparksSeen && own.size() >= SHARE * turns && own.size() >= 4 && !crank.strays().drown(own);
    double place = Strays.place(own.get(own.size() / 2));
    if (DamagedToothCheck.outOfPlace(crank, place)) {
      return Outcome.quiet();
    }
    int tooth = toothAt(crank.turns(), place);
    double probability = crank.strays().part(id()).orElseThrow().probability();
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(sparksSeen ? probability : Math.min(UNSEEN, probability))
            .saw("edge", Say.degrees(place), tooth, own.size(), Say.number(turns, 0));
    if (!sparksSeen) {
      d.against("no-coil");
    }
    return Outcome.fires(
        d.ratherThan("sparks")
            .tooth(tooth)
            .next("look-behind", tooth)
            .caution("by-hand")
            .picture(Picture.WHEEL)
            .where(IgnitionInterferenceCheck.spans(own)));
  }

  private static int toothAt(Turns turns, double place) {
    int tooth = 1;
    for (int k = 2; k <= turns.pattern().teeth(); k++) {
      tooth = turns.pattern().degreesAfterTooth1(k) <= place ? k : tooth;
    }
    return tooth;
  }
}
