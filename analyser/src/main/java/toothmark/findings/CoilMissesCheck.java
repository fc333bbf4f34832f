package toothmark.findings;

import java.util.ArrayList;
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
      return Outcome.cannotRun(Limiters.NO_COILS);
    }
    List<Interval> cuts = Limiters.spans(Limiters.of(symptoms.seen(), Limiter.Manner.SPARK_CUT));
    int busiest = coils.stream().mapToInt(c -> c.sparks().size()).max().orElse(0);
    List<AbsentSpark> missing = new ArrayList<>();
    List<String> lines = new ArrayList<>();
    double worst = 0;
    for (CoilTrack c : coils) {
      if (c.sparks().size() <= 0.05 * busiest) {
        continue;
      }
      List<AbsentSpark> own =
          c.absent().stream().filter(a -> !limited(a.timeSeconds(), cuts)).toList();
      double share = own.size() / Math.max(1.0, own.size() + c.sparks().size());
      if (!own.isEmpty()) {
        worst = Math.max(worst, share);
        missing.addAll(own);
        lines.add(line(c, own, share));
      }
    }
    if (missing.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(missing, lines, worst));
  }

  private static boolean limited(double t, List<Interval> cuts) {
    return cuts.stream()
        .anyMatch(i -> t > i.startInclusive() - MARGIN && t < i.endExclusive() + MARGIN);
  }

  private static String line(CoilTrack c, List<AbsentSpark> own, double share) {
    return "\u201c"
        + c.coil().name()
        + "\u201d leaves out "
        + own.size()
        + " of "
        + (own.size() + c.sparks().size())
        + " sparks ("
        + Say.percent(share)
        + "), the first at "
        + Say.at(own.get(0).timeSeconds())
        + ".";
  }

  private Draft draft(List<AbsentSpark> missing, List<String> lines, double worst) {
    boolean proven = missing.size() >= FAULT_COUNT && worst >= FAULT_SHARE;
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH, "Sparks are missing now and then.")
            .probability(proven ? 0.94 : 0.6);
    lines.forEach(d::saw);
    return d.ratherThan("A limiter leaves sparks out above one speed only; these are anywhere.")
        .next(
            "Wiggle the plug of the coil's drive and its supply while watching the trace; measure"
                + " the supply at the coil under load.")
        .caution(Cautions.RAW_FUEL + " " + Cautions.HIGH_VOLTAGE)
        .picture(Picture.WAVEFORM)
        .where(
            missing.stream()
                .limit(50)
                .map(a -> new Interval(a.timeSeconds() - 0.005, a.timeSeconds() + 0.005))
                .toList());
  }
}
