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
        Draft.of(id(), Severity.WATCH, "Sync is lost for a reason that the capture does not show.")
            .probability(0.5)
            .saw(
                "A textbook receiver loses sync "
                    + Words.times(spans.size())
                    + " with the engine running, and no tooth lost or added explains it: "
                    + Words.spans(spans)
                    + ".")
            .ratherThan(
                "Losses beside lost teeth, strays or other findings are told there and not counted here.")
            .next("Look at the signal at these places, and record again at a higher sample rate.")
            .caution(Cautions.TURNING)
            .picture(Picture.SYNC)
            .where(spans));
  }
}
