package toothmark.findings;

import toothmark.timing.Timing;

/** Advance is counted from the angle that the controller is told, and nothing proves that angle. */
final class TdcUnknownCheck implements Check {

  static final String ID = "tdc-unknown";

  @Override
  public String id() {
    return ID;
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Observations seen = symptoms.seen();
    if (seen.timing().reference() != Timing.Reference.NOMINAL || seen.coils().isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE, "The wheel's own angle was not checked.")
            .saw(WheelMisalignedCheck.NO_TDC)
            .saw(
                "Advance is counted from the tooth 1 angle that the controller is told: if the wheel"
                    + " stands off that angle, every spark comes early or late by as much, and this"
                    + " capture cannot show it.")
            .sawIf(
                !seen.timing().unused().isEmpty(),
                "The timing light's readings could not be used: "
                    + "it shows wheel and controller together, and the capture holds no commanded"
                    + " advance, or too few sparks, by which to part them.")
            .ratherThan("With a mark of top dead centre a wheel that is off would be measured.")
            .next(
                "Check the wheel's own angle: find top dead centre with a piston stop, then read"
                    + " the pointer with tooth 1 at the sensor, or look at that mark with a timing"
                    + " light at three speeds, and write the readings into the job sheet; or record"
                    + " a mark that rises at top dead centre on a channel of its own.")
            .caution(Cautions.BY_HAND)
            .picture(Picture.ADVANCE));
  }
}
