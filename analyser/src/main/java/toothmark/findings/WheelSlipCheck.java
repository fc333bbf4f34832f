package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.timing.Alignment;
import toothmark.timing.TdcSource;
import toothmark.timing.WheelSlip;
import toothmark.units.Say;

/** The wheel turns on its hub. */
final class WheelSlipCheck implements Check {

  /** Least movement, degrees: several times the error of a TDC mark. */
  private static final double MATTERS_DEGREES = 0.5;

  @Override
  public String id() {
    return "wheel-slip";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<Alignment> alignment = symptoms.seen().timing().alignment();
    if (alignment.filter(a -> a.source() == TdcSource.MARK_CHANNEL).isEmpty()) {
      return Outcome.cannotRun(WheelMisalignedCheck.NO_TDC);
    }
    if (alignment.get().slip().isEmpty()) {
      return Outcome.quiet();
    }
    WheelSlip slip = alignment.get().slip().get();
    double sure =
        Math.abs(slip.degrees().value()) - Say.EXPAND * slip.degrees().standardUncertainty();
    if (sure < MATTERS_DEGREES) {
      return Outcome.quiet();
    }
    boolean step = slip.manner() == WheelSlip.Manner.STEP;
    return Outcome.fires(
        Draft.of(id(), Severity.FAULT, "The trigger wheel slips on its hub.")
            .probability(0.97)
            .saw(
                "Tooth 1 moves by "
                    + Say.degrees(slip.degrees())
                    + " against top dead centre "
                    + (step ? "at once, " : "little by little, ")
                    + Words.span(slip.during())
                    + ".")
            .ratherThan("A wheel only set wrong is off by the same angle all the time.")
            .ratherThan("A late signal changes with speed and comes back; this stays.")
            .next(
                "Paint a line across hub and wheel, run the engine, and see whether it parts. Then"
                    + " check the bolts, the key and the damper's rubber.")
            .caution(
                "Stop running the engine until this is mended: advance can run away. "
                    + Cautions.ADVANCE)
            .picture(Picture.ALIGNMENT)
            .where(List.of(slip.during())));
  }
}
