package toothmark.findings;

import java.util.List;
import toothmark.timing.Limiter;
import toothmark.units.Say;

/** A speed limiter fires late: explained and normal. */
final class TimingRetardLimiterCheck implements Check {

  @Override
  public String id() {
    return "timing-retard-limiter";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().coils().isEmpty()) {
      return Outcome.cannotRun("no-coils");
    }
    List<Limiter> pulls = Limiters.of(symptoms.seen(), Limiter.Manner.RETARD);
    if (pulls.isEmpty()) {
      return Outcome.quiet();
    }
    double back = pulls.stream().mapToDouble(Limiter::pulledBackDegrees).max().orElse(0);
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE)
            .probability(0.95)
            .saw(
                Limiters.sparks(pulls),
                "later",
                Say.degrees(back),
                Say.rpm(Limiters.fromRpm(pulls)),
                Words.spans(Limiters.spans(pulls)))
            .ratherThan("delay")
            .caution("late-sparks")
            .picture(Picture.ADVANCE)
            .where(Limiters.spans(pulls)));
  }
}
