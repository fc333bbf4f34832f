package toothmark.findings;

import java.util.List;
import toothmark.ignition.CoilTrack;

/** A coil never fires, or hardly ever. */
final class CoilSilentCheck implements Check {

  /** Fewer sparks than this share of the busiest coil's are none to speak of. */
  private static final double HARDLY = 0.05;

  /** The busiest coil must fire this often to compare with. */
  private static final int FEWEST = 5;

  @Override
  public String id() {
    return "coil-silent";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    List<CoilTrack> coils = symptoms.seen().coils();
    if (coils.isEmpty()) {
      return Outcome.cannotRun("no-coils");
    }
    int busiest = coils.stream().mapToInt(c -> c.sparks().size()).max().orElse(0);
    List<CoilTrack> silent =
        coils.stream().filter(c -> c.sparks().size() <= HARDLY * busiest).toList();
    if (busiest == 0 || busiest < FEWEST) {
      return busiest == 0 && turns(symptoms) > 2 ? Outcome.fires(noneFires()) : Outcome.quiet();
    }
    if (silent.isEmpty()) {
      return Outcome.quiet();
    }
    Draft d = Draft.of(id(), Severity.FAULT).probability(0.96);
    if (silent.size() == 1) {
      d.title("one-coil", silent.get(0).coil().name());
    } else {
      d.title("coils", silent.size());
    }
    for (CoilTrack c : silent) {
      d.saw(c.sparks().size(), "sparks", c.coil().name(), busiest);
    }
    return Outcome.fires(
        d.ratherThan("limiter")
            .next("look-for-drive")
            .caution("high-voltage")
            .picture(Picture.WAVEFORM));
  }

  private static double turns(Symptoms s) {
    return s.crank().map(c -> c.turns().turned()).orElse(0.0);
  }

  private Draft noneFires() {
    return Draft.of(id(), Severity.WATCH)
        .title("none-fires")
        .probability(0.7)
        .saw("no-spark")
        .ratherThan("dead-sensor")
        .against("ignition-off")
        .next("record-again")
        .caution("high-voltage")
        .picture(Picture.WAVEFORM);
  }
}
