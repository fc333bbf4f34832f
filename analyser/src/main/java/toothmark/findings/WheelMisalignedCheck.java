package toothmark.findings;

import java.util.Optional;
import toothmark.timing.Alignment;
import toothmark.timing.TdcEvidence;
import toothmark.timing.TdcSource;
import toothmark.timing.Timing;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Tooth 1 does not pass where the controller is told. */
final class WheelMisalignedCheck implements Check {

  static final String NO_TDC = "Nothing in the capture shows top dead centre of cylinder 1.";

  /** Worth a look, degrees: a quarter of the 2 degrees that makers allow for basic timing. */
  private static final double WATCH_DEGREES = 0.5;

  /** To mend, degrees: half of those 2 degrees. */
  private static final double FAULT_DEGREES = 1.0;

  /** Marks that agree no better than this, as a standard uncertainty in degrees, show nothing. */
  private static final double AGREE_DEGREES = 3.0;

  /** Fewer marks may agree by chance. */
  private static final int PROVING_MARKS = 3;

  @Override
  public String id() {
    return "wheel-misaligned";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<Alignment> found = symptoms.seen().timing().alignment();
    if (found.isEmpty()) {
      return Outcome.cannotRun(NO_TDC);
    }
    Alignment a = found.get();
    if (a.slip().isPresent()) {
      return Outcome.cannotRun("The wheel slips, so there is no one angle to compare.");
    }
    if (a.errorDegrees().isEmpty()) {
      return Outcome.cannotRun("The job sheet does not say where the controller expects tooth 1.");
    }
    Measured error = a.errorDegrees().get();
    if (error.standardUncertainty() > AGREE_DEGREES) {
      return Outcome.cannotRun(
          a.source() == TdcSource.MARK_CHANNEL
              ? "The marks of top dead centre come at angles that disagree."
              : "What was read by hand of top dead centre is too uncertain to compare.");
    }
    double sure = Math.abs(error.value()) - Say.EXPAND * error.standardUncertainty();
    return sure < WATCH_DEGREES || otherEdge(symptoms)
        ? Outcome.quiet()
        : Outcome.fires(draft(symptoms.seen().timing(), a, error, sure));
  }

  /** Whether the wrong edge of a tooth explains the error. */
  private static boolean otherEdge(Symptoms symptoms) {
    return WrongTimingEdgeCheck.byAToothWidth(symptoms.seen())
        && new WrongTimingEdgeCheck().examine(symptoms).finding().isPresent();
  }

  private Draft draft(Timing timing, Alignment a, Measured error, double sure) {
    boolean advanced = error.value() > 0;
    boolean marks = a.source() == TdcSource.MARK_CHANNEL;
    boolean few = marks && a.points().size() < PROVING_MARKS;
    boolean proven = sure >= FAULT_DEGREES && !few;
    Measured size = new Measured(Math.abs(error.value()), error.standardUncertainty());
    Draft d =
        Draft.of(
                id(),
                proven ? Severity.FAULT : Severity.WATCH,
                "The wheel stands "
                    + Say.degrees(size)
                    + (advanced ? " too far advanced." : " too far retarded."))
            .probability(proven ? 0.98 : 0.85);
    a.tooth1BtdcDegrees()
        .ifPresent(
            m ->
                d.saw(
                    "Tooth 1 passes the sensor "
                        + Say.degrees(m)
                        + " before top dead centre; the controller is told "
                        + Say.degrees(a.nominalDegrees().orElseThrow())
                        + "."));
    d.saw("Top dead centre is known from " + a.source().words() + ".");
    timing.unused().forEach(u -> other(d, u, a));
    d.saw(
        "So every spark comes that much "
            + (advanced ? "earlier" : "later")
            + " than commanded, at all speeds.");
    String way = advanced ? "with" : "against";
    String move =
        a.sensorMoveMillimetres()
            .map(m -> new Measured(Math.abs(m.value()), m.standardUncertainty()))
            .map(m -> Say.interval(m, Say.THIN + "mm"))
            .orElse("by that angle");
    return d.ratherThan("A delay would grow with speed; this is one angle.")
        .next(
            (a.source() == TdcSource.PISTON_STOP
                    ? "Read the piston stop once more. Then move"
                    : "Confirm top dead centre with a piston stop. Then move")
                + " the sensor"
                + " "
                + move
                + " "
                + way
                + " the rotation, or change the controller's setting by "
                + Say.degrees(size)
                + ". Controllers differ in the sign of that setting: change it by five degrees and"
                + " look with a light which way the timing goes.")
        .caution(Cautions.ADVANCE)
        .picture(a.points().isEmpty() ? Picture.WHEEL : Picture.ALIGNMENT);
  }

  /** Whether a source that was not used says the same. */
  private static void other(Draft d, TdcEvidence unused, Alignment used) {
    if (unused.tooth1BtdcDegrees().isEmpty() || used.tooth1BtdcDegrees().isEmpty()) {
      return;
    }
    Measured a = unused.tooth1BtdcDegrees().get();
    Measured b = used.tooth1BtdcDegrees().get();
    double apart = Math.abs(CrankAngle.wrapDifference(a.value() - b.value()));
    String says = "By " + unused.source().words() + " it would be " + Say.degrees(a);
    if (apart <= Say.EXPAND * Math.hypot(a.standardUncertainty(), b.standardUncertainty())) {
      d.saw(says + ", which agrees.");
    } else {
      d.against(says + ", which does not agree: find out which is wrong before anything is moved.");
    }
  }
}
