package toothmark.findings;

import java.util.List;
import toothmark.ignition.AbsentSpark;
import toothmark.ignition.CoilTrack;
import toothmark.timing.Limiter;
import toothmark.units.Interval;
import toothmark.units.Say;

/** Sparks are missing now and then, and no limiter left them out. */
final class CoilMissesCheck implements Check {

  /** Share of a coil's sparks to mend. */
  private static final double FAULT_SHARE = 0.02;

  private static final int FAULT_COUNT = 3;

  /** A cut may begin one firing before it is recognised, s. */
  private static final double MARGIN = 0.05;

  @Override
  public String id() {
    return "coil-misses";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    List<CoilTrack> coils = symptoms.seen().coils();
    if (coils.isEmpty()) {
      return Outcome.cannotRun("no-coils");
    }
    List<Interval> cuts = Limiters.spans(Limiters.of(symptoms.seen(), Limiter.Manner.SPARK_CUT));
    int busiest = coils.stream().mapToInt(c -> c.sparks().size()).max().orElse(0);
    List<Missing> missing =
        coils.stream()
            .filter(c -> c.sparks().size() > 0.05 * busiest)
            .map(c -> new Missing(c, unlimited(c, cuts)))
            .filter(m -> !m.sparks().isEmpty())
            .toList();
    return missing.isEmpty() ? Outcome.quiet() : Outcome.fires(draft(missing));
  }

  /** The sparks that a coil leaves out, of some at least. */
  private record Missing(CoilTrack track, List<AbsentSpark> sparks) {

    int due() {
      return sparks.size() + track.sparks().size();
    }

    double share() {
      return (double) sparks.size() / due();
    }
  }

  private static List<AbsentSpark> unlimited(CoilTrack coil, List<Interval> cuts) {
    return coil.absent().stream().filter(a -> !limited(a.timeSeconds(), cuts)).toList();
  }

  private static boolean limited(double t, List<Interval> cuts) {
    return cuts.stream()
        .anyMatch(i -> t > i.startInclusive() - MARGIN && t < i.endExclusive() + MARGIN);
  }

  private Draft draft(List<Missing> missing) {
    List<AbsentSpark> all = missing.stream().flatMap(m -> m.sparks().stream()).toList();
    double worst = missing.stream().mapToDouble(Missing::share).max().orElseThrow();
    boolean proven = all.size() >= FAULT_COUNT && worst >= FAULT_SHARE;
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH).probability(proven ? 0.94 : 0.6);
    for (Missing m : missing) {
      d.saw(
          "left-out",
          m.track().coil().name(),
          m.sparks().size(),
          m.due(),
          Say.percent(m.share()),
          Say.at(m.sparks().get(0).timeSeconds()));
    }
    return d.ratherThan("limiter")
        .caution("raw-fuel", "high-voltage")
        .picture(Picture.WAVEFORM)
        .where(
            all.stream()
                .limit(50)
                .map(a -> new Interval(a.timeSeconds() - 0.005, a.timeSeconds() + 0.005))
                .toList());
  }
}
