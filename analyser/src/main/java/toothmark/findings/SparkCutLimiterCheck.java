package toothmark.findings;

import java.util.List;
import toothmark.timing.Limiter;
import toothmark.units.Say;

/** A speed limiter leaves sparks out: explained and normal. */
final class SparkCutLimiterCheck implements Check {

  @Override
  public String id() {
    return "spark-cut-limiter";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().coils().isEmpty()) {
      return Outcome.cannotRun("no-coils");
    }
    List<Limiter> cuts = Limiters.of(symptoms.seen(), Limiter.Manner.SPARK_CUT);
    if (cuts.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE)
            .probability(0.95)
            .saw(
                "left-out",
                Limiters.sparks(cuts),
                Limiters.due(cuts),
                Say.rpm(Limiters.fromRpm(cuts)),
                Words.spans(Limiters.spans(cuts)))
            .ratherThan("misfire")
            .ratherThan("lost-sync")
            .caution("not-held", "raw-fuel")
            .picture(Picture.ADVANCE)
            .where(Limiters.spans(cuts)));
  }
}
