package toothmark.findings;

import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/** A few sync losses while the starter turns: explained and normal. */
final class CrankingLossesCheck extends CrankCheck {

  static final String ID = "cranking-sync-losses";

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
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE)
            .title("lost", Words.times(cranking))
            .probability(0.8)
            .saw("times", Words.times(cranking), Say.rpm(SyncLoss.CRANKING_BELOW_RPM))
            .ratherThan("running")
            .caution("starter")
            .picture(Picture.SYNC));
  }
}
