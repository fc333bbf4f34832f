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
      return Outcome.cannotRun(Limiters.NO_COILS);
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
        Draft.of(
                id(),
                proven ? Severity.FAULT : Severity.WATCH,
                "Ignition sparks disturb the crank signal.")
            .probability(sparks.length > 0 ? p : Math.min(p, 0.7));
    if (sparks.length > 0) {
      withSparks(d, own, sparks, seen.coils());
      effect(d, taken, felt);
    } else {
      d.saw(
          own.size()
              + " disturbances come at the angles at which the engine fires,"
              + " evenly around the turn.");
      d.against("No coil was recorded, so the sparks themselves cannot be compared.");
    }
    return Outcome.fires(
        d.ratherThan("A bolt head stays at one angle; these follow the sparks.")
            .ratherThan("Random noise comes at any time; these come just after a spark.")
            .next(
                "Unplug the coils and crank: the extra edges should go. Then route the sensor lead"
                    + " away from coils and plug leads, ground its shield at one end, and fit"
                    + " resistor plugs.")
            .caution(Cautions.HIGH_VOLTAGE)
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
    String when =
        latest < AT_ONCE
            ? "at the instant of a spark"
            : Say.seconds(Math.max(0, delays[delays.length / 10]))
                + " to "
                + Say.seconds(latest)
                + " after a spark";
    d.saw(
        Words.count(own.size(), "disturbance comes ", "disturbances come ")
            + when
            + ", on "
            + Say.percent(Math.min(1, (double) own.size() / sparks.length))
            + " of all sparks.");
    d.sawIf(
        coils.size() > 1,
        "The delay is the same on all recorded coils, so the angle moves with the advance.");
  }

  /** What came of disturbances. */
  static void effect(Draft d, int taken, boolean felt) {
    d.sawIf(
        taken > 0,
        Words.count(taken, "of them looks", "of them look")
            + " like an edge to a textbook receiver or to the decoding.");
    d.sawIf(taken == 0 && felt, "After some of them a textbook receiver misses teeth.");
    d.sawIf(!felt, "None of them is taken for an edge, so nothing fails yet.");
  }

  /** Short spans around strays, for pictures. */
  static List<Interval> spans(List<Stray> strays) {
    return strays.stream()
        .limit(50)
        .map(s -> new Interval(s.timeSeconds() - 0.002, s.timeSeconds() + 0.002))
        .toList();
  }
}
