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
        Draft.of(id(), Severity.NOTE)
            .saw("no-tdc")
            .saw("on-trust")
            .sawIf(!seen.timing().unused().isEmpty(), "light-unused")
            .ratherThan("wheel-off")
            .caution("by-hand")
            .picture(Picture.ADVANCE));
  }
}
