package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import toothmark.edges.Disturbances;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.Spark;
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

  private final List<Stray> events;
  private final List<Mixture.Part> parts;

  private Strays(List<Stray> events, List<Mixture.Part> parts) {
    this.events = List.copyOf(events);
    this.parts = List.copyOf(parts);
  }

  static Strays of(Turns turns, ReceiverView receiver, Observations seen) {
    List<Stray> events = collect(turns, receiver, seen.disturbances());
    double[] sparks = sparkTimes(seen);
    List<Mixture.Source> sources =
        new StraySources(turns, events, sparks, seen.stated().cylinders()).all();
    return new Strays(events, Mixture.divide(events.size(), sources));
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
    if (turns.covers(time)) {
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

  private static double[] sparkTimes(Observations seen) {
    double[] t =
        seen.coils().stream()
            .map(CoilTrack::sparks)
            .flatMap(List::stream)
            .mapToDouble(Spark::timeSeconds)
            .toArray();
    Arrays.sort(t);
    return t;
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
    String[] c = new String[events.size()];
    for (Mixture.Part p : parts) {
      p.events().forEach(e -> c[e] = p.cause());
    }
    return c;
  }

  /** Where in its turn a stray stands, degrees after tooth 1. */
  static double place(Stray s) {
    return CrankAngle.wrap(s.degrees());
  }
}
