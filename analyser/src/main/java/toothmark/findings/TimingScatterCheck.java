package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Sparks stray about their commanded angle from one to the next. */
final class TimingScatterCheck implements Check {

  /** Worth a look, degrees: a steady controller holds a few tenths. */
  private static final double WATCH_DEGREES = 0.5;

  /** To mend, degrees: three sparks in a hundred are then off by the 2 degrees makers allow. */
  private static final double FAULT_DEGREES = 0.75;

  private static final int FEWEST = 10;

  @Override
  public String id() {
    return "timing-scatter";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<GapFit> fit = symptoms.seen().timing().gap();
    if (fit.isEmpty() || fit.get().fitted() < FEWEST) {
      return Outcome.cannotRun(TimingShapes.NO_GAP);
    }
    GapFit g = fit.get();
    Measured scatter =
        new Measured(g.scatterDegrees(), g.scatterDegrees() / Math.sqrt(2.0 * g.fitted()));
    double sure = scatter.value() - Say.EXPAND * scatter.standardUncertainty();
    if (sure < WATCH_DEGREES || TimingShapes.named(g, GapShape.ACCELERATION)) {
      return Outcome.quiet();
    }
    boolean proven = sure >= FAULT_DEGREES;
    return Outcome.fires(
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH, "The spark timing is unsteady.")
            .probability(proven ? 0.95 : 0.75)
            .saw(
                "From spark to spark the advance strays by "
                    + Say.degrees(scatter)
                    + " (standard deviation, "
                    + Words.count(g.fitted(), "spark", "sparks")
                    + "), after the change with speed is taken off.")
            .ratherThan("The wheel's own errors are taken off, and they repeat every turn.")
            .next(
                "Record again at a steady speed. If it stays, look at the controller's tooth filter"
                    + " and at how it predicts speed; if it goes, it was the change of speed.")
            .caution(Cautions.ADVANCE)
            .picture(Picture.ADVANCE));
  }
}
