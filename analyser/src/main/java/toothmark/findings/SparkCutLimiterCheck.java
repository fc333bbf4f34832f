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
      return Outcome.cannotRun(Limiters.NO_COILS);
    }
    List<Limiter> cuts = Limiters.of(symptoms.seen(), Limiter.Manner.SPARK_CUT);
    if (cuts.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE, "A speed limiter cuts sparks; nothing is wrong with them.")
            .probability(0.95)
            .saw(
                Limiters.sparks(cuts)
                    + " of "
                    + Limiters.due(cuts)
                    + " sparks are left out, all above "
                    + Say.rpm(Limiters.fromRpm(cuts))
                    + ", "
                    + Words.spans(Limiters.spans(cuts))
                    + ".")
            .ratherThan("Misfire leaves the spark in place; here the coil is not charged at all.")
            .ratherThan("A loss of sync would show in the crank signal, which is whole.")
            .next("Compare this speed with the limiter's setting in the controller.")
            .caution("Do not hold the engine at the limiter to test it. " + Cautions.RAW_FUEL)
            .picture(Picture.ADVANCE)
            .where(Limiters.spans(cuts)));
  }
}
