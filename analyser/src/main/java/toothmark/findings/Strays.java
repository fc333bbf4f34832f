package toothmark.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import toothmark.edges.Disturbances;
import toothmark.ignition.CoilTrack;
import toothmark.units.CrankAngle;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * Every edge that is no tooth, and what strewed it: sparks, a place on the wheel, the gap, the
 * starter, a fixed frequency, or nothing in particular.
 */
final class Strays {

  /**
   * Edges nearer than this are one disturbance, s. A burst from a coil rings for some tens of
   * microseconds, and a receiver may take several of its swings.
   */
  private static final double ONE_DISTURBANCE = 0.3e-3;

  /** Sparks seen below this share of those of the engine: other coils were not recorded. */
  private static final double SOME_COILS = 0.75;

  /** A spark is due again no nearer than this to one already there, s. */
  private static final double SAME_SPARK = 0.5e-3;

  /** Below this the wheel as good as stands and a wave sensor gives nothing, rev/min. */
  static final double STILL_RPM = 50;

  private final double[] sparks;
  private final List<Stray> events;
  private final List<Mixture.Part> parts;
  private final String[] causes;

  private Strays(double[] sparks, List<Stray> events, List<Mixture.Part> parts) {
    this.sparks = sparks;
    this.events = List.copyOf(events);
    this.parts = List.copyOf(parts);
    this.causes = new String[events.size()];
    parts.forEach(p -> p.events().forEach(e -> causes[e] = p.cause()));
  }

  static Strays of(Turns turns, ReceiverView receiver, Observations seen) {
    List<Stray> events = collect(turns, receiver, seen.disturbances());
    double[] sparks = sparkTimes(turns, seen);
    List<Mixture.Source> sources =
        new StraySources(turns, events, sparks, seen.stated().cylinders()).all();
    return new Strays(sparks, events, Mixture.divide(events.size(), sources));
  }

  private static List<Stray> collect(
      Turns turns, ReceiverView receiver, Disturbances disturbances) {
    List<Stray> all = new ArrayList<>();
    receiver.strays().forEach(t -> add(all, turns, t, Stray.Effect.EDGE));
    ToothEvents decoded = turns.crank().wheel().events();
    for (int i = 0; i < decoded.size(); i++) {
      if (decoded.kind(i) == ToothKind.STRAY) {
        add(all, turns, decoded.time(i), Stray.Effect.EDGE);
      }
    }
    for (int i = 0; i < disturbances.size(); i++) {
      add(all, turns, disturbances.time(i), Stray.Effect.NONE);
    }
    all.sort(Comparator.comparingDouble(Stray::timeSeconds));
    return merge(all);
  }

  private static void add(List<Stray> all, Turns turns, double time, Stray.Effect effect) {
    if (turns.covers(time) && turns.rpmAt(time) >= STILL_RPM) {
      all.add(new Stray(time, turns.angleAt(time), turns.rpmAt(time), effect));
    }
  }

  /** One event for what comes in one burst, at its beginning. */
  private static List<Stray> merge(List<Stray> all) {
    List<Stray> events = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (Stray s : all) {
      int before = events.size() - 1;
      if (s.timeSeconds() - last > ONE_DISTURBANCE) {
        events.add(s);
      } else if (s.effect() == Stray.Effect.EDGE) {
        Stray first = events.get(before);
        events.set(
            before, new Stray(first.timeSeconds(), first.degrees(), first.rpm(), s.effect()));
      }
      last = s.timeSeconds();
    }
    return events;
  }

  /** How many of some strays were taken for an edge. */
  static int taken(List<Stray> strays) {
    return (int) strays.stream().filter(s -> s.effect() == Stray.Effect.EDGE).count();
  }

  /** Sparks of the recorded coils, and where those of the others were due. */
  private static double[] sparkTimes(Turns turns, Observations seen) {
    TreeSet<Double> times = new TreeSet<>();
    for (CoilTrack c : seen.coils()) {
      c.sparks().forEach(s -> times.add(s.timeSeconds()));
    }
    int cylinders = seen.stated().cylinders();
    if (cylinders > 2 && times.size() < SOME_COILS * turns.turned() * cylinders / 2) {
      for (double t : List.copyOf(times)) {
        addDue(times, turns, t, 2 * CrankAngle.REVOLUTION / cylinders);
      }
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static void addDue(TreeSet<Double> times, Turns turns, double spark, double every) {
    if (!turns.covers(spark)) {
      return;
    }
    double from = turns.angleAt(spark);
    for (double d = every; d < CrankAngle.REVOLUTION - 1; d += every) {
      double due = turns.timeAt(from + d);
      Double near = times.ceiling(due - SAME_SPARK);
      if (near == null || near > due + SAME_SPARK) {
        times.add(due);
      }
    }
  }

  /** Times of sparks recorded or due, s, rising; empty where no coil was recorded. */
  double[] sparks() {
    return sparks.clone();
  }

  List<Stray> events() {
    return events;
  }

  List<Mixture.Part> parts() {
    return parts;
  }

  /** The strays put down to a cause. */
  List<Stray> of(String cause) {
    return parts.stream()
        .filter(p -> p.cause().equals(cause))
        .flatMap(p -> p.events().stream())
        .sorted()
        .map(events::get)
        .toList();
  }

  /** The part of a cause with the greatest gain, where it has one. */
  java.util.Optional<Mixture.Part> part(String cause) {
    return parts.stream()
        .filter(p -> p.cause().equals(cause))
        .max(java.util.Comparator.comparingDouble(Mixture.Part::gain));
  }

  /** What each stray is put down to, in the order of the events. */
  String[] causes() {
    return causes.clone();
  }

  /** Whether so much random noise was taken for edges that some order in it means little. */
  boolean drown(List<Stray> some) {
    return taken(of(StraySources.RANDOM)) > taken(some);
  }

  /** What a stray is put down to. */
  String cause(int event) {
    return causes[event];
  }

  /** The last stray at or before an instant; -1 before the first. */
  int lastUpTo(double time) {
    int low = 0;
    int high = events.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (events.get(middle).timeSeconds() <= time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }

  /** Where in its turn a stray stands, degrees after tooth 1. */
  static double place(Stray s) {
    return CrankAngle.wrap(s.degrees());
  }
}
