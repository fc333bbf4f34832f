package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.timing.PulseWidths;
import toothmark.units.Say;

/** The mark of top dead centre wanders, or is no mark, so what rests on it is in doubt. */
final class TdcMarkCheck implements Check {

  /** Share of readings that may be thrown out. */
  private static final double REJECTED = 0.2;

  private static final int FEWEST = 5;

  @Override
  public String id() {
    return "tdc-mark-unsteady";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<Alignment> a = symptoms.seen().timing().alignment();
    if (a.isEmpty() || a.get().points().size() < FEWEST) {
      return Outcome.cannotRun("no-tdc");
    }
    List<AlignmentPoint> points = a.get().points();
    PulseWidths widths = widths(points);
    if (widths.keepTime()) {
      return Outcome.fires(
          mark()
              .probability(0.95)
              .saw(
                  "widths",
                  Say.percent(widths.scatterInTime()),
                  Say.percent(widths.scatterInAngle()))
              .title("coil")
              .ratherThan("metal")
              .next("name-it"));
    }
    long out = points.stream().filter(p -> p.used() == AlignmentPoint.Use.REJECTED).count();
    if (out < REJECTED * points.size() || a.get().slip().isPresent()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        mark()
            .probability(0.8)
            .saw("readings", out, points.size(), Say.percent((double) out / points.size()))
            .ratherThan("slip"));
  }

  /** Whether what is called a mark keeps its length in time, as the charge of a coil does. */
  static boolean keepsTime(Alignment alignment) {
    return widths(alignment.points()).keepTime();
  }

  private static PulseWidths widths(List<AlignmentPoint> points) {
    return PulseWidths.of(
        points.stream().mapToDouble(AlignmentPoint::widthDegrees).toArray(),
        points.stream().mapToDouble(AlignmentPoint::rpm).toArray());
  }

  private Draft mark() {
    return Draft.of(id(), Severity.WATCH).caution("turning").picture(Picture.ALIGNMENT);
  }
}
