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

  /** A resonance that swings by so much of a movement may be the whole of it. */
  private static final double SWINGS = 0.5;

  @Override
  public String id() {
    return "wheel-slip";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<Alignment> alignment = symptoms.seen().timing().alignment();
    if (alignment.filter(a -> a.source() == TdcSource.MARK_CHANNEL).isEmpty()) {
      return Outcome.cannotRun("no-tdc");
    }
    if (TdcMarkCheck.keepsTime(alignment.get())) {
      return Outcome.cannotRun("no-mark");
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
    boolean swings =
        symptoms
            .crank()
            .flatMap(CrankSymptoms::resonance)
            .filter(r -> r.degrees() > SWINGS * Math.abs(slip.degrees().value()))
            .isPresent();
    Draft d =
        Draft.of(id(), swings ? Severity.WATCH : Severity.FAULT)
            .probability(swings ? 0.3 : 0.97)
            .saw(
                step ? "at-once" : "little",
                Say.degrees(slip.degrees()),
                Words.span(slip.during()));
    if (swings) {
      d.against("swings");
    }
    return Outcome.fires(
        d.ratherThan("set-wrong")
            .ratherThan("late-signal")
            .caution("stop-running", "advance")
            .picture(Picture.ALIGNMENT)
            .where(List.of(slip.during())));
  }
}
