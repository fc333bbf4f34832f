package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Say;

/** A check for one way in which the gap to the commanded advance changes with speed. */
abstract class GapShapeCheck implements Check {

  private final String id;
  private final GapShape shape;

  /**
   * A check.
   *
   * @param id of the finding
   * @param shape that the fit must name
   */
  GapShapeCheck(String id, GapShape shape) {
    this.id = id;
    this.shape = shape;
  }

  @Override
  public final String id() {
    return id;
  }

  @Override
  public final Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().timing().gap().isEmpty()) {
      return Outcome.cannotRun("no-gap");
    }
    Optional<GapFit> fit = TimingShapes.fitNaming(symptoms.seen(), shape);
    return fit.isEmpty() ? Outcome.quiet() : Outcome.fires(draft(fit.get()));
  }

  private Draft draft(GapFit g) {
    return describe(Draft.of(id, Severity.WATCH).probability(0.8))
        .saw(g.fitted(), "sparks-say-so", Say.rpm(g.fromRpm()), Say.rpm(g.toRpm()))
        .picture(Picture.ADVANCE);
  }

  /** Adds what the shape looks like, what it was told apart from and the caution. */
  abstract Draft describe(Draft draft);
}
