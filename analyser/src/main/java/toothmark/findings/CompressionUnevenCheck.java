package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.units.Measured;
import toothmark.units.Say;

/** One cylinder compresses less than the others. */
final class CompressionUnevenCheck extends CrankCheck {

  /** Compression tests allow the lowest cylinder 10 to 25 % less (common practice, no source). */
  private static final double WATCH = 0.15;

  /** Standard uncertainties by which it must be below. */
  private static final double SURE = 3;

  @Override
  public String id() {
    return "compression-uneven";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.stated().cylinders() < 1) {
      return Outcome.cannotRun("The job sheet does not say how many cylinders there are.");
    }
    Optional<Cranking> found = Cranking.of(seen);
    if (found.isEmpty()) {
      return Outcome.cannotRun(
          "Compressions can be compared only over four engine cycles or more on the starter, of an"
              + " even number of four cylinders or more, with 12 teeth or more.");
    }
    Cranking c = found.get();
    int weakest = weakest(c.compressions());
    if (!stands(c.compressions(), weakest)) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                Severity.WATCH,
                "One cylinder compresses less than the others on the starter.")
            .probability(0.75)
            .saw(evidence(c))
            .sawIf(
                !c.compressions().get(weakest).cylinders().isEmpty(),
                "It is cylinder "
                    + Words.either(c.compressions().get(weakest).cylinders())
                    + "; which of the two, a wheel on the crank does not show.")
            .against(
                "A battery or starter that sags, or a slack chain, can make compressions uneven.")
            .ratherThan("The wheel's own errors repeat every turn; this repeats every second turn.")
            .next("Test compression, or leak-down, of each cylinder.")
            .caution("Switch off fuel and ignition first. " + Cautions.STARTER)
            .picture(Picture.SPEED));
  }

  private static String evidence(Cranking c) {
    return "In the order in which they follow each other, over "
        + c.cycles()
        + " cycles at "
        + Say.rpm(c.meanRpm())
        + ", the compressions take "
        + c.shares()
        + " of their mean energy.";
  }

  private static int weakest(List<Cranking.Compression> all) {
    int least = 0;
    for (int i = 1; i < all.size(); i++) {
      least = all.get(i).share().value() < all.get(least).share().value() ? i : least;
    }
    return least;
  }

  /** Below even the next weaker one, and so below that one turn on, where the wheel reads alike. */
  private static boolean stands(List<Cranking.Compression> all, int weakest) {
    Measured own = all.get(weakest).share();
    Measured next = all.get(weakest == 0 ? 1 : 0).share();
    for (int i = 0; i < all.size(); i++) {
      Measured other = all.get(i).share();
      next = i != weakest && other.value() < next.value() ? other : next;
    }
    double below = next.value() - own.value();
    return below > WATCH * next.value()
        && below > SURE * Math.hypot(own.standardUncertainty(), next.standardUncertainty());
  }
}
