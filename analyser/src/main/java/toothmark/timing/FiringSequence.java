package toothmark.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.FiringOrder;
import toothmark.ignition.Spark;
import toothmark.units.CrankAngle;

/**
 * Whether the coils fired one after the other as the firing order says, cycle by cycle.
 *
 * <p>The order alone is looked at, not top dead centre: coils that are all off by the same angle
 * keep it. How far the cycle is ahead is taken from the first sparks, where most of them find one
 * of their coil's places, and followed from spark to spark as the advance moves; a spark further
 * from each of its places than about a third of the shortest firing interval is out of order.
 *
 * @param order the cylinders in the order in which they should fire
 * @param sparks how many were looked at
 * @param cycles cycles of 720 degrees that hold them
 * @param cyclesOut how many of these hold a spark out of order
 * @param out the sparks out of order, in time order
 */
public record FiringSequence(
    List<Integer> order, int sparks, int cycles, int cyclesOut, List<OutOfOrder> out) {

  /** So many sparks settle how far the cycle is ahead. */
  private static final int TO_SETTLE_ON = 40;

  /** Fewer sparks show no order. */
  private static final int FEWEST = 4;

  /** Share of the shortest firing interval within which a spark is in its place. */
  private static final double NEAR = 0.35;

  /** How much of a spark's deviation the followed advance takes over. */
  private static final double FOLLOW = 0.2;

  /** Places nearer to each other than this are one, degrees. */
  private static final double ONE_PLACE_DEGREES = 1;

  /** Copies the lists. */
  public FiringSequence {
    order = List.copyOf(order);
    out = List.copyOf(out);
  }

  /**
   * A spark out of order.
   *
   * @param timeSeconds s
   * @param coil number of its coil, from 0
   * @param offDegrees how far it is from the nearest place of its own coil, positive late
   * @param inPlaceOf number of the coil that was due there; empty where none was
   */
  public record OutOfOrder(
      double timeSeconds, int coil, double offDegrees, Optional<Integer> inPlaceOf) {}

  /** A spark: when, of which coil, and where the crank was. */
  private record Fired(double seconds, int coil, double degrees) {}

  /**
   * Looks at the order.
   *
   * @param coils what each coil did
   * @param order the firing order
   * @return empty where fewer than two coils fired at different places, or too few sparks
   */
  static Optional<FiringSequence> of(List<CoilTrack> coils, FiringOrder order) {
    List<Fired> fired = new ArrayList<>();
    List<double[]> places = new ArrayList<>();
    for (int c = 0; c < coils.size(); c++) {
      places.add(places(coils.get(c), order));
      for (Spark s : coils.get(c).sparks()) {
        if (s.turn() == Spark.Turn.FIRST && s.crank().isPresent()) {
          fired.add(new Fired(s.timeSeconds(), c, s.crank().get().degreesAfterTooth1()));
        }
      }
    }
    fired.sort(Comparator.comparingDouble(Fired::seconds));
    double near = NEAR * shortest(places);
    return fired.size() < FEWEST || fired.stream().map(Fired::coil).distinct().count() < 2
        ? Optional.empty()
        : Optional.of(read(fired, places, near, order.order()));
  }

  /** Where in the cycle a coil fires, degrees after cylinder 1. */
  private static double[] places(CoilTrack coil, FiringOrder order) {
    double[] own =
        coil.coil().cylinders().stream().mapToDouble(order::degreesAfterCylinder1).toArray();
    boolean everyTurn = own.length == 1 && coil.firesEveryDegrees() == CrankAngle.REVOLUTION;
    return everyTurn ? new double[] {own[0], own[0] + CrankAngle.REVOLUTION} : own;
  }

  private static double shortest(List<double[]> places) {
    double[] all =
        places.stream()
            .flatMapToDouble(Arrays::stream)
            .map(d -> d % FiringOrder.CYCLE)
            .sorted()
            .toArray();
    double shortest = FiringOrder.CYCLE;
    for (int i = 0; i < all.length; i++) {
      double next = i + 1 < all.length ? all[i + 1] : all[0] + FiringOrder.CYCLE;
      double apart = next - all[i];
      shortest = apart > ONE_PLACE_DEGREES ? Math.min(shortest, apart) : shortest;
    }
    return shortest;
  }

  private static FiringSequence read(
      List<Fired> fired, List<double[]> places, double near, List<Integer> order) {
    double ahead = settled(fired, places, near);
    Set<Long> cycles = new HashSet<>();
    Set<Long> cyclesOut = new HashSet<>();
    List<OutOfOrder> out = new ArrayList<>();
    for (Fired f : fired) {
      long cycle = (long) Math.floor((f.degrees() - ahead + near) / FiringOrder.CYCLE);
      cycles.add(cycle);
      double off = off(f, places.get(f.coil()), ahead);
      if (Math.abs(off) < near) {
        ahead += FOLLOW * off;
      } else {
        cyclesOut.add(cycle);
        out.add(new OutOfOrder(f.seconds(), f.coil(), off, due(f, places, ahead, near)));
      }
    }
    return new FiringSequence(order, fired.size(), cycles.size(), cyclesOut.size(), out);
  }

  /** How far the cycle is ahead, degrees after tooth 1, for most of the first sparks. */
  private static double settled(List<Fired> fired, List<double[]> places, double near) {
    List<Fired> first = fired.subList(0, Math.min(TO_SETTLE_ON, fired.size()));
    double best = 0;
    long most = -1;
    for (Fired f : first) {
      for (double place : places.get(f.coil())) {
        double ahead = f.degrees() - place;
        long fitting =
            first.stream()
                .filter(o -> Math.abs(off(o, places.get(o.coil()), ahead)) < near)
                .count();
        best = fitting > most ? ahead : best;
        most = Math.max(most, fitting);
      }
    }
    return best;
  }

  /** From the nearest of some places, degrees. */
  private static double off(Fired f, double[] places, double ahead) {
    double nearest = Double.POSITIVE_INFINITY;
    for (double place : places) {
      double off = Math.IEEEremainder(f.degrees() - place - ahead, FiringOrder.CYCLE);
      nearest = Math.abs(off) < Math.abs(nearest) ? off : nearest;
    }
    return nearest;
  }

  private static Optional<Integer> due(Fired f, List<double[]> places, double ahead, double near) {
    for (int c = 0; c < places.size(); c++) {
      if (c != f.coil() && Math.abs(off(f, places.get(c), ahead)) < near) {
        return Optional.of(c);
      }
    }
    return Optional.empty();
  }
}
