package toothmark.chart;

import java.util.Optional;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.GapFit;
import toothmark.timing.SparkTiming;
import toothmark.units.CrankAngle;
import toothmark.wheel.DecodedWheel;

/**
 * What a comparison draws of one capture; holds on to nothing of it.
 *
 * @param speed speed of each turn over turns from the first
 * @param wheel the wheel; empty when none was found
 * @param gap gap of each spark over speed
 * @param fit fit of the gap
 * @param turn signal of one turn over degrees after tooth 1; empty points for none
 * @param turnRpm its speed, rev/min
 * @param unit of the signal
 */
record RunOutline(
    Points speed,
    Optional<DecodedWheel> wheel,
    Points gap,
    Optional<GapFit> fit,
    Points turn,
    double turnRpm,
    String unit) {

  /** Outlines a capture, with its turn that is nearest to a speed. */
  static RunOutline of(Examination e, double rpm) {
    Optional<CrankTurns> turns = CrankTurns.of(e);
    int nearest = turns.map(t -> t.nearest(rpm)).orElse(0);
    return new RunOutline(
        speed(e),
        e.observations().crank().map(DecodedCrank::wheel),
        gap(e),
        e.observations().timing().gap(),
        turns.map(t -> t.turn(nearest)).orElseGet(Points::new),
        turns.map(t -> t.rpm(nearest)).orElse(0.0),
        turns.map(CrankTurns::unit).orElse(""));
  }

  private static Points speed(Examination e) {
    Points overTime = Timeline.turnSpeeds(e);
    Points overTurns = new Points();
    Optional<AngleTimeline> angle = e.observations().crank().map(DecodedCrank::angle);
    for (int i = 0; i < overTime.size() && angle.isPresent(); i++) {
      double turned = angle.get().degreesAt(overTime.x(i)) - angle.get().degreesAt(overTime.x(0));
      overTurns.add(turned / CrankAngle.REVOLUTION, overTime.y(i));
    }
    return overTurns;
  }

  private static Points gap(Examination e) {
    Points gap = new Points();
    for (SparkTiming s : e.observations().timing().sparks()) {
      boolean comparable =
          s.standing() == SparkTiming.Standing.FITTED
              || s.standing() == SparkTiming.Standing.NOT_COMPARABLE;
      if (comparable && s.spark().crank().isPresent() && s.gapDegrees().isPresent()) {
        gap.add(s.spark().crank().get().rpm(), s.gapDegrees().getAsDouble());
      }
    }
    return gap;
  }
}
