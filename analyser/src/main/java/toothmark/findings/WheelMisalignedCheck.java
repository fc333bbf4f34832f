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
      return Outcome.cannotRun("no-tdc");
    }
    Alignment a = found.get();
    if (TdcMarkCheck.keepsTime(a)) {
      return Outcome.cannotRun("no-mark");
    }
    if (a.slip().isPresent()) {
      return Outcome.cannotRun("slips");
    }
    if (a.errorDegrees().isEmpty()) {
      return Outcome.cannotRun("not-told");
    }
    Measured error = a.errorDegrees().get();
    if (error.standardUncertainty() > AGREE_DEGREES) {
      return Outcome.cannotRun(
          a.source() == TdcSource.MARK_CHANNEL ? "marks-disagree" : "readings-uncertain");
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
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .title(advanced ? "advanced" : "retarded", Say.degrees(size))
            .probability(proven ? 0.98 : 0.85);
    a.tooth1BtdcDegrees()
        .ifPresent(
            m -> d.saw("passes", Say.degrees(m), Say.degrees(a.nominalDegrees().orElseThrow())));
    d.saw("source", Words.of(a.source()));
    timing.unused().forEach(u -> other(d, u, a));
    d.saw(advanced ? "earlier" : "later");
    d.next(a.source() == TdcSource.PISTON_STOP ? "read-again" : "confirm");
    a.sensorMoveMillimetres()
        .map(m -> new Measured(Math.abs(m.value()), m.standardUncertainty()))
        .map(m -> Say.interval(m, Say.THIN + "mm"))
        .ifPresentOrElse(
            mm -> d.next(advanced ? "move-with" : "move-against", Say.degrees(size), mm),
            () -> d.next(advanced ? "turn-with" : "turn-against", Say.degrees(size)));
    return d.next("setting-sign")
        .ratherThan("delay")
        .caution("advance")
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
    String source = Words.of(unused.source());
    if (apart <= Say.EXPAND * Math.hypot(a.standardUncertainty(), b.standardUncertainty())) {
      d.saw("agrees", source, Say.degrees(a));
    } else {
      d.against("disagrees", source, Say.degrees(a));
    }
  }
}
