package toothmark.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.GapFit;
import toothmark.timing.SparkTiming;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.ToothGeometry;

/**
 * What a comparison draws of one capture; holds on to nothing of it, and can be drawn from what was
 * written of it as well.
 *
 * @param speed speed of each turn over turns from the first
 * @param wheel the wheel, as "36-1"; empty when none was found
 * @param teeth how far each tooth passes after its nominal place, degrees, by tooth from 1; empty
 *     when that was not learned
 * @param gap gap of each spark over speed
 * @param offsetDegrees offset of the gap
 * @param delaySeconds its delay
 * @param turns some turns of the crank signal, at speeds that other captures may have too
 * @param unit of the signal; empty text for a level that has none
 */
public record RunOutline(
    Points speed,
    Optional<String> wheel,
    List<Measured> teeth,
    Points gap,
    Optional<Measured> offsetDegrees,
    Optional<Measured> delaySeconds,
    List<Turn> turns,
    String unit) {

  /** Preferred numbers, the R10 series of ISO 3:1973, so that two captures keep turns alike. */
  private static final double STEPS_A_DECADE = 10;

  private static final double SLOWEST = 10;

  /** Copies the lists. */
  public RunOutline {
    teeth = List.copyOf(teeth);
    turns = List.copyOf(turns);
    unit = unit.isEmpty() ? Wording.of("axis.level") : unit;
  }

  /**
   * One turn of the signal.
   *
   * @param rpm its speed, rev/min
   * @param signal over degrees after tooth 1
   */
  public record Turn(double rpm, Points signal) {}

  /**
   * Outlines a capture.
   *
   * @param e its examination; the capture must be open
   * @return what there is to draw of it
   */
  public static RunOutline of(Examination e) {
    Optional<GapFit> fit = e.observations().timing().gap();
    Optional<DecodedWheel> wheel = e.observations().crank().map(DecodedCrank::wheel);
    return new RunOutline(
        speed(e),
        wheel.map(w -> w.pattern().toString()),
        wheel.map(w -> teeth(w.geometry())).orElse(List.of()),
        gap(e),
        fit.map(GapFit::offsetDegrees),
        fit.flatMap(GapFit::delaySeconds),
        CrankTurns.of(e).map(RunOutline::turns).orElse(List.of()),
        CrankTurns.of(e).map(CrankTurns::unit).orElse(""));
  }

  /** Those nearest to the middle of the speeds and to each preferred number between them. */
  private static List<Turn> turns(CrankTurns all) {
    double[] rpm = IntStream.range(0, all.size()).mapToDouble(all::rpm).toArray();
    double low = DoubleStream.of(rpm).min().orElseThrow();
    double high = DoubleStream.of(rpm).max().orElseThrow();
    List<Double> wanted = new ArrayList<>(List.of((low + high) / 2));
    for (int step = 0; preferred(step) <= high; step++) {
      if (preferred(step) >= low) {
        wanted.add(preferred(step));
      }
    }
    return wanted.stream()
        .map(all::nearest)
        .distinct()
        .sorted()
        .map(i -> new Turn(rpm[i], all.turn(i)))
        .toList();
  }

  private static double preferred(int step) {
    return SLOWEST * Math.pow(10, step / STEPS_A_DECADE);
  }

  private static List<Measured> teeth(ToothGeometry g) {
    return IntStream.rangeClosed(1, g.turns() > 0 ? g.teeth() : 0)
        .mapToObj(k -> new Measured(g.offsetDegrees(k), g.uncertaintyDegrees(k)))
        .toList();
  }

  /**
   * The turn of this that best goes with one of another: of speeds as alike as can be, since
   * signals grow with speed, and of those alike the fastest.
   */
  Optional<Turn> besides(RunOutline other) {
    Comparator<Turn> alike =
        Comparator.comparingLong(
            t -> other.turns.stream().mapToLong(o -> percent(o.rpm(), t.rpm())).min().orElse(0));
    return turns.stream().min(alike.thenComparingDouble(t -> -t.rpm()));
  }

  private static long percent(double a, double b) {
    return Math.round(100 * Math.abs(Math.log(a / b)));
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
