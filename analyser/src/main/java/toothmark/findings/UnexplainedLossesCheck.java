package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import toothmark.receiver.SyncLoss;
import toothmark.units.Interval;

/** Sync losses with the engine running that nothing else explains. */
final class UnexplainedLossesCheck extends CrankCheck {

  static final String ID = "unexplained-sync-losses";

  @Override
  public String id() {
    return ID;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<String> causes = SyncCauses.of(seen, crank);
    List<Interval> spans = new ArrayList<>();
    for (int i = 0; i < causes.size(); i++) {
      SyncLoss loss = seen.receiver().losses().get(i);
      if (causes.get(i).isEmpty() && loss.phase() == SyncLoss.Phase.RUNNING) {
        spans.add(new Interval(loss.timeSeconds() - 0.01, loss.timeSeconds() + 0.01));
      }
    }
    if (spans.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.5)
            .saw("losses", Words.times(spans.size()), Words.spans(spans))
            .ratherThan("told-there")
            .caution("turning")
            .picture(Picture.SYNC)
            .where(spans));
  }
}
