package toothmark.findings;

import java.util.List;
import toothmark.ignition.CoilTrack;
import toothmark.units.Say;

/** A coil fires again close behind its spark. */
final class DoubleSparksCheck implements Check {

  private static final double FAULT_SHARE = 0.02;
  private static final int FAULT_COUNT = 3;

  @Override
  public String id() {
    return "double-sparks";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    List<CoilTrack> coils = symptoms.seen().coils();
    if (coils.isEmpty()) {
      return Outcome.cannotRun(Limiters.NO_COILS);
    }
    int repeated = coils.stream().mapToInt(CoilTrack::repeated).sum();
    int all = coils.stream().mapToInt(c -> c.sparks().size()).sum();
    if (repeated == 0) {
      return Outcome.quiet();
    }
    double share = (double) repeated / all;
    boolean proven = repeated >= FAULT_COUNT && share >= FAULT_SHARE;
    return Outcome.fires(
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH, "Some sparks come twice.")
            .probability(proven ? 0.93 : 0.6)
            .saw(
                Words.count(repeated, "spark follows", "sparks follow")
                    + " close behind another of the same coil ("
                    + Say.percent(share)
                    + ").")
            .against("A system that fires several sparks on purpose looks the same.")
            .ratherThan(
                "The second spark of a coil that serves two cylinders comes a whole turn later; these follow at once.")
            .next(
                "Look at the coil's drive with an oscilloscope: a dip in the supply, or noise on the"
                    + " controller's ground, makes it let go and charge again.")
            .caution(Cautions.HIGH_VOLTAGE)
            .picture(Picture.WAVEFORM));
  }
}
