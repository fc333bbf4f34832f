package toothmark.timing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.Spark;
import toothmark.units.CrankAngle;

/**
 * Reads the advance of each spark before the top dead centre of its coil's own cylinders.
 *
 * <p>The tooth 1 angle is the one that the same teeth show at the same speed, so that the sensor's
 * lag, which delays the teeth beside mark and spark alike, takes itself out.
 */
final class AdvanceReader {

  /** Where an advance is sought when a coil fires several cylinders, degrees. */
  private static final double USUAL_DEGREES = 20;

  private final TimingInputs in;
  private final Optional<AlignedWheel> aligned;

  AdvanceReader(TimingInputs in, Optional<AlignedWheel> aligned) {
    this.in = in;
    this.aligned = aligned;
  }

  List<SparkTiming> read() {
    List<SparkTiming> out = new ArrayList<>();
    for (int c = 0; c < in.coils().size(); c++) {
      CoilTrack track = in.coils().get(c);
      double centre = centre(track);
      for (Spark s : track.sparks()) {
        out.add(timing(c, track, s, centre));
      }
    }
    out.sort(Comparator.comparingDouble(t -> t.spark().timeSeconds()));
    return out;
  }

  private SparkTiming timing(int coil, CoilTrack track, Spark spark, double centre) {
    OptionalDouble advance = OptionalDouble.empty();
    OptionalDouble raw = raw(track, spark);
    if (raw.isPresent()) {
      advance = OptionalDouble.of(centre + CrankAngle.wrapDifference(raw.getAsDouble() - centre));
    }
    return new SparkTiming(
        coil,
        track.coil().name(),
        spark,
        advance,
        commanded(spark),
        SparkTiming.Standing.NOT_COMPARABLE);
  }

  private OptionalDouble commanded(Spark spark) {
    return in.commanded().isEmpty() || spark.crank().isEmpty()
        ? OptionalDouble.empty()
        : in.commanded().get().at(spark.timeSeconds(), in.timeline(), ScheduledSpeed.USUAL);
  }

  /** Mean direction of a coil's advances, so that no coil is cut in two at +-180 degrees. */
  private double centre(CoilTrack track) {
    double x = 0;
    double y = 0;
    for (Spark s : track.sparks()) {
      OptionalDouble a = raw(track, s);
      if (a.isPresent()) {
        x += Math.cos(Math.toRadians(a.getAsDouble()));
        y += Math.sin(Math.toRadians(a.getAsDouble()));
      }
    }
    return Math.toDegrees(Math.atan2(y, x));
  }

  /** Advance before the nearest fitting top dead centre; turns do not count. */
  private OptionalDouble raw(CoilTrack track, Spark spark) {
    OptionalDouble nominal = in.wheel().nominalTooth1BtdcDegrees();
    if (spark.crank().isEmpty() || (aligned.isEmpty() && nominal.isEmpty())) {
      return OptionalDouble.empty();
    }
    CrankPoint p = spark.crank().get();
    double tooth1 =
        aligned.isPresent()
            ? aligned.get().tooth1At(p.rpm(), spark.timeSeconds())
            : nominal.getAsDouble();
    double usual = commanded(spark).orElse(USUAL_DEGREES);
    double best = Double.POSITIVE_INFINITY;
    for (int cylinder : track.coil().cylinders()) {
      double tdc = tooth1 + in.order().degreesAfterCylinder1(cylinder);
      double a = usual + CrankAngle.wrapDifference(tdc - p.degreesAfterTooth1() - usual);
      best = Math.abs(a - usual) < Math.abs(best - usual) - 1e-6 ? a : best;
    }
    return Double.isInfinite(best) ? OptionalDouble.empty() : OptionalDouble.of(best);
  }
}
