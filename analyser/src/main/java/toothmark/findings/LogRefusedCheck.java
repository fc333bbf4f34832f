package toothmark.findings;

import java.util.Optional;
import toothmark.timing.LogMatch;

/** The controller's log does not belong to the capture. */
final class LogRefusedCheck implements Check {

  @Override
  public String id() {
    return "log-does-not-fit";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<LogMatch> log = symptoms.seen().timing().log();
    if (log.isEmpty()) {
      return Outcome.cannotRun("no-log");
    }
    if (log.get().outcome() != LogMatch.Outcome.REFUSED) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.9)
            .saw("reason", log.get().reason())
            .ratherThan("shifted")
            .caution("turning")
            .picture(Picture.SPEED));
  }
}
