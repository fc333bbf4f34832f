package toothmark.findings;

import java.util.List;
import toothmark.ignition.CoilTrack;
import toothmark.units.Interval;
import toothmark.units.Say;

/** Sparks show up on the crank signal as edges that are no teeth. */
final class IgnitionInterferenceCheck extends CrankCheck {

  /** Below this many a chance coincidence is not excluded by their places alone. */
  private static final int PROVEN = 3;

  /** A sample or two after a spark, s. */
  private static final double AT_ONCE = 30e-6;

  @Override
  public String id() {
    return StraySources.IGNITION;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<Stray> own = crank.strays().of(id());
    double[] sparks = crank.strays().sparks();
    if (sparks.length == 0 && seen.stated().cylinders() < 4) {
      return Outcome.cannotRun("no-coils");
    }
    if (own.isEmpty()) {
      return Outcome.quiet();
    }
    double p = crank.strays().part(id()).orElseThrow().probability();
    int taken = Strays.taken(own);
    boolean felt = taken > 0 || crank.hides(own);
    boolean sure = sparks.length > 0 && own.size() >= PROVEN && p > 0.95;
    boolean proven = sure && felt && !crank.strays().drown(own);
    Draft d =
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(sparks.length > 0 ? p : Math.min(p, 0.7));
    if (sparks.length > 0) {
      withSparks(d, own, sparks, seen.coils());
      effect(d, taken, felt);
    } else {
      d.saw(own.size(), "at-angles");
      d.against("no-coil");
    }
    return Outcome.fires(
        d.ratherThan("bolt-head")
            .ratherThan("random-noise")
            .caution("high-voltage")
            .picture(Picture.WAVEFORM)
            .where(spans(own)));
  }

  private static void withSparks(Draft d, List<Stray> own, double[] sparks, List<CoilTrack> coils) {
    double[] delays =
        own.stream()
            .mapToDouble(s -> SparkDelays.delay(s.timeSeconds(), sparks))
            .sorted()
            .toArray();
    double latest = delays[delays.length * 9 / 10];
    String share = Say.percent(Math.min(1, (double) own.size() / sparks.length));
    if (latest < AT_ONCE) {
      d.saw(own.size(), "at-once", share);
    } else {
      String earliest = Say.seconds(Math.max(0, delays[delays.length / 10]));
      d.saw(own.size(), "after-spark", earliest, Say.seconds(latest), share);
    }
    d.sawIf(coils.size() > 1, "same-delay");
  }

  /** What came of disturbances. */
  static void effect(Draft d, int taken, boolean felt) {
    if (taken > 0) {
      d.saw(taken, "taken");
    }
    d.sawIf(taken == 0 && felt, "teeth-missed");
    d.sawIf(!felt, "not-felt");
  }

  /** Short spans around strays, for pictures. */
  static List<Interval> spans(List<Stray> strays) {
    return strays.stream()
        .limit(50)
        .map(s -> new Interval(s.timeSeconds() - 0.002, s.timeSeconds() + 0.002))
        .toList();
  }
}
