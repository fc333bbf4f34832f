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
      return Outcome.cannotRun("no-coils");
    }
    int repeated = coils.stream().mapToInt(CoilTrack::repeated).sum();
    int all = coils.stream().mapToInt(c -> c.sparks().size()).sum();
    if (repeated == 0) {
      return Outcome.quiet();
    }
    double share = (double) repeated / all;
    boolean proven = repeated >= FAULT_COUNT && share >= FAULT_SHARE;
    return Outcome.fires(
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(proven ? 0.93 : 0.6)
            .saw(repeated, "twice", Say.percent(share))
            .against("on-purpose")
            .ratherThan("second-cylinder")
            .caution("high-voltage")
            .picture(Picture.WAVEFORM));
  }
}
