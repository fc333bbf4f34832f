package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import toothmark.receiver.SyncLoss;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;

/**
 * How densely each possible cause would strew strays over the record, in strays a second.
 *
 * <p>Prices are in nats: ln of the odds against the cause before anything was measured, plus ln of
 * the number of places or frequencies among which the best was chosen. They are judgements of how
 * common each cause is in the trade (common practice, no source) and matter little: a cause at work
 * gains 2 to 5 nats with each stray.
 */
final class StraySources {

  static final String RANDOM = "random-noise-pickup";
  static final String IGNITION = "ignition-interference";
  static final String FEATURE = "extra-wheel-feature";
  static final String GAP = "gap-noise";
  static final String STARTER = "starter-noise";
  static final String PERIODIC = "periodic-interference";
  static final String OPEN = "intermittent-connection";

  private static final double FEATURE_WIDTH_DEGREES = 1.5;
  private static final double SPARK_ANGLE_WIDTH_DEGREES = 4.0;
  private static final int FEWEST = 3;

  /** As many strays as it takes to see where they crowd. */
  private static final int ENOUGH = 500;

  private final Turns turns;
  private final List<Stray> events;
  private final double[] sparks;
  private final int cylinders;

  StraySources(Turns turns, List<Stray> events, double[] sparks, int cylinders) {
    this.turns = turns;
    this.events = events;
    this.sparks = sparks;
    this.cylinders = cylinders;
  }

  List<Mixture.Source> all() {
    List<Mixture.Source> sources = new ArrayList<>();
    double second = 1.0 / Math.max(1e-9, turns.span().seconds());
    sources.add(new Mixture.Source(RANDOM, 0, e -> second));
    addOpen(sources);
    if (events.size() < FEWEST) {
      return sources;
    }
    if (sparks.length > 0) {
      sources.add(SparkDelays.source(times(), sparks));
    } else if (cylinders >= 4) {
      sources.add(comb(IGNITION, 360.0 * 2 / cylinders, SPARK_ANGLE_WIDTH_DEGREES, 50));
    }
    sources.add(comb(FEATURE, 360.0, FEATURE_WIDTH_DEGREES, 100));
    addGap(sources);
    addStarter(sources);
    PeriodicStrays.source(times(), turns).ifPresent(sources::add);
    return sources;
  }

  private double[] times() {
    return events.stream().mapToDouble(Stray::timeSeconds).toArray();
  }

  /** Strays at one place of every interval of the crank, a turn or a part of it. */
  private Mixture.Source comb(String cause, double every, double width, double oddsAgainst) {
    double place = densest(every, width);
    double price = Math.log(oddsAgainst) + Math.log(every / width);
    double places = turns.turned() * CrankAngle.REVOLUTION / every;
    return new Mixture.Source(
        cause,
        price,
        e -> {
          Stray s = events.get(e);
          double z = distance(s.degrees() - place, every) / width;
          double perDegree = Math.exp(-0.5 * z * z) / (width * Math.sqrt(2 * Math.PI));
          return perDegree * 6.0 * s.rpm() / places;
        });
  }

  private double densest(double every, double width) {
    int bins = (int) Math.ceil(every / width * 2);
    double[] weight = new double[bins];
    int stride = (events.size() + ENOUGH - 1) / ENOUGH;
    for (int e = 0; e < events.size(); e += stride) {
      Stray s = events.get(e);
      double at = s.degrees() - every * Math.floor(s.degrees() / every);
      for (int b = 0; b < bins; b++) {
        double z = distance(at - b * every / bins, every) / width;
        weight[b] += Math.exp(-0.5 * z * z);
      }
    }
    int best = 0;
    for (int b = 1; b < bins; b++) {
      best = weight[b] > weight[best] ? b : best;
    }
    return best * every / bins;
  }

  private static double distance(double difference, double every) {
    double d = difference - every * Math.rint(difference / every);
    return Math.abs(d);
  }

  private void addGap(List<Mixture.Source> sources) {
    double seconds = 0;
    for (int i = 0; i + 1 < turns.teeth(); i++) {
      if (turns.beforeGap(turns.number(i))) {
        seconds += turns.time(i + 1) - turns.time(i);
      }
    }
    if (seconds > 0) {
      double density = 1.0 / seconds;
      sources.add(new Mixture.Source(GAP, Math.log(20), e -> inGap(events.get(e)) ? density : 0));
    }
  }

  private boolean inGap(Stray s) {
    int i = turns.toothBefore(s.timeSeconds());
    return i >= 0 && turns.beforeGap(turns.number(i));
  }

  /** An open wire picks up anything, and jumps as it opens and closes. */
  private void addOpen(List<Mixture.Source> sources) {
    List<Interval> dark = Losses.dark(turns);
    double seconds = dark.stream().mapToDouble(Interval::seconds).sum();
    if (seconds > 0) {
      double density = 1.0 / seconds;
      sources.add(
          new Mixture.Source(
              OPEN,
              Math.log(2),
              e ->
                  dark.stream().anyMatch(d -> d.contains(events.get(e).timeSeconds()))
                      ? density
                      : 0));
    }
  }

  private void addStarter(List<Mixture.Source> sources) {
    double seconds = crankingSeconds(turns);
    if (seconds > 0 && seconds < 0.9 * turns.span().seconds()) {
      double density = 1.0 / seconds;
      sources.add(
          new Mixture.Source(
              STARTER,
              Math.log(20),
              e -> events.get(e).rpm() < SyncLoss.CRANKING_BELOW_RPM ? density : 0));
    }
  }

  /** How long the starter turned the engine, s. */
  static double crankingSeconds(Turns turns) {
    double seconds = 0;
    for (int i = 0; i + 1 < turns.teeth(); i++) {
      if (turns.rpmAt(turns.time(i)) < SyncLoss.CRANKING_BELOW_RPM) {
        seconds += turns.time(i + 1) - turns.time(i);
      }
    }
    return seconds;
  }
}
