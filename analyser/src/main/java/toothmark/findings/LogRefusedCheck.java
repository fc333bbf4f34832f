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
      return Outcome.cannotRun("No log of the controller was given.");
    }
    if (log.get().outcome() != LogMatch.Outcome.REFUSED) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The controller's log does not fit the capture.")
            .probability(0.9)
            .saw(log.get().reason())
            .ratherThan("A log that merely starts at another time is shifted into place.")
            .next(
                "Start both recordings before a short rev of the engine, so that both hold the same"
                    + " rise in speed.")
            .caution(Cautions.TURNING)
            .picture(Picture.SPEED));
  }
}
