package toothmark.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.StatUtils;
import toothmark.ignition.FiringOrder;
import toothmark.ignition.Spark;

/** Sums sparks up by coil, and sees which coil fires in another's place. */
final class CoilPlaces {

  /** An advance that nobody commands differently by more than half a firing interval, degrees. */
  private static final double USUAL_DEGREES = 15;

  /** A coil turned by whole intervals stands no further from them than this share of one. */
  private static final double NEAR_SHARE = 0.3;

  private CoilPlaces() {}

  static List<CoilTiming> of(List<SparkTiming> sparks, TimingInputs in) {
    double interval =
        Math.min(FiringOrder.CYCLE / in.order().order().size(), FiringOrder.CYCLE / 4);
    List<CoilTiming> out = new ArrayList<>();
    for (int c = 0; c < in.coils().size(); c++) {
      List<Double> advances = new ArrayList<>();
      List<Double> gaps = new ArrayList<>();
      for (SparkTiming s : sparks) {
        if (s.coil() == c
            && s.advanceDegrees().isPresent()
            && s.spark().turn() == Spark.Turn.FIRST) {
          advances.add(s.advanceDegrees().getAsDouble());
          s.gapDegrees().ifPresent(gaps::add);
        }
      }
      if (!advances.isEmpty()) {
        out.add(coil(c, in.coils().get(c).coil().name(), array(advances), array(gaps), interval));
      }
    }
    return out;
  }

  private static CoilTiming coil(
      int coil, String name, double[] advances, double[] gaps, double interval) {
    double off = gaps.length > 0 ? Robust.median(gaps) : Robust.median(advances) - USUAL_DEGREES;
    double turned = interval * Math.rint(off / interval);
    boolean near = Math.abs(off - turned) < NEAR_SHARE * interval;
    return new CoilTiming(
        coil,
        name,
        advances.length,
        StatUtils.mean(advances),
        gaps.length > 0 ? OptionalDouble.of(StatUtils.mean(gaps)) : OptionalDouble.empty(),
        near ? turned + 0.0 : 0);
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
