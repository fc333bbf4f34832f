package toothmark.findings;

import java.util.stream.IntStream;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/** Sync losses while the starter turns: a few are normal, one in most turns is not. */
final class CrankingLossesCheck extends CrankCheck {

  static final String ID = "cranking-sync-losses";

  /** More than a handful is not usual, where they come in most turns (common practice). */
  private static final int HANDFUL = 6;

  private static final double TURNS_EACH = 2;

  @Override
  public String id() {
    return ID;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    int cranking = seen.receiver().losses(SyncLoss.Phase.CRANKING);
    if (cranking == 0) {
      return Outcome.quiet();
    }
    boolean usual = cranking <= HANDFUL || cranking * TURNS_EACH <= cranked(crank.turns());
    return Outcome.fires(
        Draft.of(id(), usual ? Severity.NOTE : Severity.WATCH)
            .title(usual ? "lost" : "often", Words.times(cranking))
            .probability(0.8)
            .saw("times", Words.times(cranking), Say.rpm(SyncLoss.CRANKING_BELOW_RPM))
            .ratherThan("running")
            .caution("starter")
            .picture(Picture.SYNC));
  }

  /** Turns that the starter turned, as far as teeth were named. */
  private static double cranked(Turns turns) {
    long slow =
        IntStream.range(0, turns.teeth())
            .filter(i -> turns.rpmAt(turns.time(i)) < SyncLoss.CRANKING_BELOW_RPM)
            .count();
    return slow / (double) turns.pattern().teeth();
  }
}
