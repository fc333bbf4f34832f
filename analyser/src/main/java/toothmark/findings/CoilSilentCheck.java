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
      return Outcome.cannotRun(Limiters.NO_COILS);
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
    Draft d = Draft.of(id(), Severity.FAULT, title(silent)).probability(0.96);
    for (CoilTrack c : silent) {
      d.saw(
          "\u201c"
              + c.coil().name()
              + "\u201d gives "
              + Words.count(c.sparks().size(), "spark", "sparks")
              + " while another coil gives "
              + busiest
              + ".");
    }
    return Outcome.fires(
        d.ratherThan("A limiter leaves sparks out on all coils in turn.")
            .next(
                "Check that the probe is on the right wire. Then look for the coil's drive at the"
                    + " controller's plug: there, and the wire or coil is open; not there, and the"
                    + " output is off.")
            .caution(Cautions.HIGH_VOLTAGE)
            .picture(Picture.WAVEFORM));
  }

  private static double turns(Symptoms s) {
    return s.crank().map(c -> c.turns().turned()).orElse(0.0);
  }

  private static String title(List<CoilTrack> silent) {
    return silent.size() == 1
        ? "\u201c" + silent.get(0).coil().name() + "\u201d does not fire."
        : silent.size() + " coils do not fire.";
  }

  private Draft noneFires() {
    return Draft.of(id(), Severity.WATCH, "No recorded coil fires.")
        .probability(0.7)
        .saw("The crank turns, but no coil channel shows a spark.")
        .ratherThan(
            "A dead crank sensor silences the coils too, but here the crank is seen turning.")
        .against("Ignition may have been off, or the controller had no sync yet.")
        .next("Record again with ignition on, and check that the probes are on the coil drives.")
        .caution(Cautions.HIGH_VOLTAGE)
        .picture(Picture.WAVEFORM);
  }
}
