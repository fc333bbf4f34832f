package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.units.Say;

/** The mark of top dead centre wanders, so what rests on it is in doubt. */
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
    long out = points.stream().filter(p -> p.used() == AlignmentPoint.Use.REJECTED).count();
    if (out < REJECTED * points.size() || a.get().slip().isPresent()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.8)
            .saw("readings", out, points.size(), Say.percent((double) out / points.size()))
            .ratherThan("slip")
            .caution("turning")
            .picture(Picture.ALIGNMENT));
  }
}
