package toothmark.findings;

import java.util.List;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/** Edges come and teeth go at random. */
final class RandomNoiseCheck extends CrankCheck {

  /** This many while the engine runs are no chance event of a sound installation. */
  private static final int PROVEN = 4;

  /** Share of all strays: fewer are the rim of another cause. */
  private static final double OWN_SHARE = 0.12;

  /** With so much of the record on the starter, its noise and any other look alike. */
  private static final double NEARLY_ALL = 0.9;

  @Override
  public String id() {
    return StraySources.RANDOM;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<Stray> strays = crank.strays().of(id());
    long running = strays.stream().filter(s -> s.rpm() >= SyncLoss.CRANKING_BELOW_RPM).count();
    int all = crank.strays().events().size();
    if (strays.size() < 2 || strays.size() < OWN_SHARE * all) {
      return Outcome.quiet();
    }
    int taken = Strays.taken(strays);
    boolean felt = taken > 0 || crank.hides(strays);
    boolean proven = running >= PROVEN && felt;
    int lost = crank.losses().of(Losses.RANDOM).size() + crank.losses().of(Losses.HIDDEN).size();
    double seconds = crank.turns().span().seconds();
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(proven ? 0.93 : 0.55)
            .saw(strays.size(), "at-random", Say.seconds(seconds));
    IgnitionInterferenceCheck.effect(d, taken, felt);
    d.sawIf(lost > 0, "lost", Words.times(lost));
    d.sawIf(StraySources.crankingSeconds(crank.turns()) > NEARLY_ALL * seconds, "only-cranked");
    return Outcome.fires(
        d.ratherThan("other-noise")
            .caution("shield")
            .picture(Picture.SYNC)
            .where(IgnitionInterferenceCheck.spans(strays)));
  }
}
