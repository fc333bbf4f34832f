package toothmark.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.complex.Complex;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.Spark;
import toothmark.units.CrankAngle;
import toothmark.wheel.WheelPattern;

/**
 * Which teeth went before a coil's charge and spark in one band of speed, by the middle of its
 * sparks.
 *
 * @param rpm mean speed, rev/min
 * @param sparks how many it rests on
 * @param charge where charging began; empty where the pick-up does not show it
 * @param spark where the coil fired
 * @param duty for which share of the time it charged, 0 to 1; empty where the pick-up does not show
 *     it
 */
public record CoilTeeth(
    double rpm,
    int sparks,
    Optional<FiringTeeth.Place> charge,
    FiringTeeth.Place spark,
    OptionalDouble duty) {

  /** Sparks whose mean direction is shorter come at several places of a revolution. */
  private static final double ONE_PLACE = 0.9;

  /**
   * Counts a coil's teeth.
   *
   * @param wheel the wheel
   * @param coil the coil
   * @param bands bands of speed
   * @return one for each band in which the coil fires at one place of the revolution, rising
   */
  public static List<CoilTeeth> of(WheelPattern wheel, CoilTrack coil, List<SpeedBand> bands) {
    List<CoilTeeth> out = new ArrayList<>();
    for (SpeedBand band : bands) {
      List<Spark> inBand =
          coil.sparks().stream()
              .filter(s -> s.turn() == Spark.Turn.FIRST)
              .filter(s -> s.crank().filter(p -> within(band, p)).isPresent())
              .toList();
      Complex sum =
          inBand.stream()
              .map(s -> s.crank().orElseThrow().degreesAfterTooth1())
              .map(d -> new Complex(0, Math.toRadians(d)).exp())
              .reduce(Complex.ZERO, Complex::add);
      if (!inBand.isEmpty() && sum.abs() >= ONE_PLACE * inBand.size()) {
        out.add(at(wheel, Math.toDegrees(sum.getArgument()), coil, inBand));
      }
    }
    return out;
  }

  private static boolean within(SpeedBand band, CrankPoint point) {
    return point.rpm() >= band.fromRpm() && point.rpm() < band.toRpm();
  }

  private static CoilTeeth at(
      WheelPattern wheel, double degrees, CoilTrack coil, List<Spark> sparks) {
    double rpm =
        sparks.stream().mapToDouble(s -> s.crank().orElseThrow().rpm()).average().orElseThrow();
    Optional<FiringTeeth.Place> charge =
        sparks.stream().flatMapToDouble(s -> s.dwellSeconds().stream()).average().stream()
            .mapToObj(dwell -> place(wheel, degrees - CrankAngle.turned(rpm, dwell)))
            .findFirst();
    OptionalDouble duty = sparks.stream().flatMapToDouble(s -> coil.duty(s).stream()).average();
    return new CoilTeeth(rpm, sparks.size(), charge, place(wheel, degrees), duty);
  }

  private static FiringTeeth.Place place(WheelPattern wheel, double degrees) {
    return FiringTeeth.lastBefore(FiringTeeth.degrees(wheel), degrees);
  }
}
