package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.timing.CoilTiming;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.timing.Limiter;
import toothmark.timing.SensorLag;
import toothmark.timing.SparkTiming;
import toothmark.timing.SpeedBand;
import toothmark.timing.TdcSource;
import toothmark.timing.Timing;
import toothmark.units.Interval;
import toothmark.units.Measured;

/** What was measured of the timing of the run that is written down by hand. */
final class SampleTiming {

  private SampleTiming() {}

  static Timing of(List<SparkTiming> sparks) {
    List<AlignmentPoint> points = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      points.add(
          new AlignmentPoint(
              i * 0.04,
              1000 + 40 * i,
              87.4 + 0.05 * Math.sin(i),
              Double.NaN,
              AlignmentPoint.Use.KEPT));
    }
    Alignment alignment =
        new Alignment(
            TdcSource.MARK_CHANNEL,
            OptionalDouble.of(90),
            Optional.of(new Measured(87.402, 0.021)),
            Optional.of(new Measured(-2.598, 0.021)),
            Optional.of(new Measured(-3.401, 0.027)),
            new SensorLag(new Measured(20e-6, 3e-6), SensorLag.KnownFrom.CHANGE_WITH_SPEED),
            Optional.empty(),
            new Alignment.Parts(0.005, 0.018, 0.01),
            points);
    GapFit fit =
        new GapFit(
            new Measured(-2.604, 0.031),
            Optional.of(new Measured(100.3e-6, 1.9e-6)),
            -0.9,
            1012,
            4880,
            sparks.size(),
            2,
            Optional.empty(),
            0.06,
            GapFit.Verdict.NAMED,
            List.of(new GapFit.ShapeScore(GapShape.DELAY, 0)));
    return new Timing(
        Timing.Reference.MEASURED,
        Optional.of(alignment),
        List.of(),
        sparks,
        List.of(
            new CoilTiming(0, "coil 1", 190, 15.1, OptionalDouble.of(-4.4), 0),
            new CoilTiming(1, "coil 2", 190, 15.2, OptionalDouble.of(-4.4), 0)),
        Optional.empty(),
        List.of(
            new SpeedBand(
                1000,
                2000,
                1510,
                70,
                10.3,
                OptionalDouble.of(13.8),
                OptionalDouble.of(-3.5),
                OptionalDouble.of(0.07)),
            new SpeedBand(
                2000,
                3000,
                2510,
                110,
                12.2,
                OptionalDouble.of(16.3),
                OptionalDouble.of(-4.1),
                OptionalDouble.empty())),
        Optional.of(fit),
        List.of(new Limiter(Limiter.Manner.SPARK_CUT, 4700, new Interval(3.8, 3.95), 3, 12, 0)),
        Optional.empty(),
        Optional.empty());
  }
}
