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
        Draft.of(
                id(),
                Severity.NOTE,
                "Sync is lost "
                    + Words.times(cranking)
                    + " while cranking; a few losses are usual.")
            .probability(0.8)
            .saw(
                "A textbook receiver loses sync "
                    + Words.times(cranking)
                    + " below "
                    + Say.rpm(SyncLoss.CRANKING_BELOW_RPM)
                    + ", where compression slows the crank within a tooth or two.")
            .ratherThan("Losses with the engine running are not counted here.")
            .next("If it starts slowly, note whether the count rises once the engine runs.")
            .caution(Cautions.STARTER)
            .picture(Picture.SYNC));
  }
}
