package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.FiringOrder;
import toothmark.timing.Alignment;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;

/**
 * What stands on a wheel beside its teeth.
 *
 * @param firings where coils fire, outermost first
 * @param tdcs where cylinders are at TDC, that of cylinder 1 first; empty when not known
 * @param origin where the teeth come from, such as {@code 36 turns}
 */
record WheelMarks(List<Firing> firings, List<Tdc> tdcs, String origin) {

  /** Angles that are equal to one of so many parts of a degree are one place. */
  private static final double PLACES = 100;

  WheelMarks {
    firings = List.copyOf(firings);
    tdcs = List.copyOf(tdcs);
  }

  /** Those of an examination, with the arcs over nine tenths of each coil's sparks. */
  static WheelMarks of(Examination examination, String origin, Ink ink) {
    List<CoilTrack> coils = examination.observations().coils();
    List<Firing> firings = new ArrayList<>();
    for (int i = 0; i < coils.size(); i++) {
      String name = coils.get(i).coil().name();
      Color colour = ink.coil(i);
      spread(coils.get(i)).ifPresent(s -> firings.add(new Firing(name, colour, s[0], s[1], s[2])));
    }
    return new WheelMarks(
        firings,
        examination
            .firing()
            .map(order -> Tdc.all(tdc(examination), order))
            .orElseGet(() -> Tdc.first(tdc(examination))),
        origin);
  }

  /** Fifth, fiftieth and ninety-fifth percentile of a coil's angles, unrolled. */
  private static Optional<double[]> spread(CoilTrack coil) {
    double[] angles =
        coil.sparks().stream()
            .flatMap(s -> s.crank().stream())
            .mapToDouble(c -> c.degreesAfterTooth1())
            .toArray();
    if (angles.length == 0) {
      return Optional.empty();
    }
    double middle = angles[angles.length / 2];
    double[] sorted =
        DoubleStream.of(angles).map(a -> CrankAngle.wrapDifference(a - middle)).sorted().toArray();
    int n = sorted.length - 1;
    double centre = CrankAngle.wrap(middle);
    return Optional.of(
        new double[] {
          centre + sorted[(int) Math.round(0.05 * n)],
          centre + sorted[(int) Math.round(0.5 * n)],
          centre + sorted[(int) Math.round(0.95 * n)]
        });
  }

  private static OptionalDouble tdc(Examination examination) {
    return examination
        .observations()
        .timing()
        .alignment()
        .flatMap(Alignment::tooth1BtdcDegrees)
        .map(Measured::value)
        .map(OptionalDouble::of)
        .orElse(examination.sheet().wheel().tooth1BtdcDegrees());
  }

  /**
   * Where cylinders are at TDC.
   *
   * @param degrees after tooth 1
   * @param cylinders their numbers in words; empty where only that of cylinder 1 is known
   */
  record Tdc(double degrees, String cylinders) {

    /** Of one cylinder, in an engine of which no more is known. */
    static List<Tdc> first(OptionalDouble degrees) {
      return degrees.isPresent() ? List.of(new Tdc(degrees.getAsDouble(), "")) : List.of();
    }

    /** Of all cylinders of an engine; those that come up together, a turn apart, are one. */
    static List<Tdc> all(OptionalDouble first, FiringOrder order) {
      Map<Long, String> places = new LinkedHashMap<>();
      for (int cylinder : IntStream.rangeClosed(1, order.order().size()).toArray()) {
        double at = CrankAngle.wrap(first.orElse(0) + order.degreesAfterCylinder1(cylinder));
        places.merge(
            Math.round(at * PLACES) % Math.round(CrankAngle.REVOLUTION * PLACES),
            Integer.toString(cylinder),
            (a, b) -> a + " · " + b);
      }
      return first.isEmpty()
          ? List.of()
          : places.entrySet().stream()
              .map(p -> new Tdc(p.getKey() / PLACES, p.getValue()))
              .toList();
    }
  }

  /**
   * An arc with a dot at one place of it, degrees after tooth 1, unrolled.
   *
   * @param name what fires
   * @param colour of the arc
   */
  record Firing(
      String name, Color colour, double fromDegrees, double dotDegrees, double toDegrees) {}
}
