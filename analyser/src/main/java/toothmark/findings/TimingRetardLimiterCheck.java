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
      return Outcome.cannotRun(Limiters.NO_COILS);
    }
    List<Limiter> pulls = Limiters.of(symptoms.seen(), Limiter.Manner.RETARD);
    if (pulls.isEmpty()) {
      return Outcome.quiet();
    }
    double back = pulls.stream().mapToDouble(Limiter::pulledBackDegrees).max().orElse(0);
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE, "A speed limiter pulls the spark back; nothing is wrong.")
            .probability(0.95)
            .saw(
                Words.count(Limiters.sparks(pulls), "spark comes ", "sparks come ")
                    + Say.degrees(back)
                    + " later than commanded, all above "
                    + Say.rpm(Limiters.fromRpm(pulls))
                    + ", "
                    + Words.spans(Limiters.spans(pulls))
                    + ".")
            .ratherThan("A delay would show at all speeds; below this one the timing is as before.")
            .next("Compare this speed with the limiter's setting in the controller.")
            .caution("Late sparks heat the exhaust: do not hold the engine at the limiter.")
            .picture(Picture.ADVANCE)
            .where(Limiters.spans(pulls)));
  }
}
