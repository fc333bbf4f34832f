package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.capture.Channel;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** The crank signal turn by turn, from tooth 1 to tooth 1, over its angle. */
final class CrankTurns {

  private static final int COLUMNS = 720;

  private final Channel channel;
  private final Curve curve;
  private final AngleTimeline angle;
  private final List<Double> starts;

  private CrankTurns(Channel channel, Curve curve, AngleTimeline angle, List<Double> starts) {
    this.channel = channel;
    this.curve = curve;
    this.angle = angle;
    this.starts = starts;
  }

  /** The turns of an examination; empty when none was decoded or there is no signal to draw. */
  static Optional<CrankTurns> of(Examination examination) {
    Optional<Channel> channel =
        examination.observations().capture().channel(examination.roles().crank());
    Optional<Curve> curve = channel.flatMap(c -> SignalCurve.of(c.signal()));
    Optional<AngleTimeline> angle = examination.observations().crank().map(DecodedCrank::angle);
    List<Double> starts =
        new ArrayList<>(examination.teeth().map(CrankTurns::starts).orElse(List.of()));
    starts.removeIf(t -> angle.isEmpty() || !angle.get().covers(t));
    return curve.isPresent() && angle.isPresent() && starts.size() > 1
        ? Optional.of(new CrankTurns(channel.get(), curve.get(), angle.get(), starts))
        : Optional.empty();
  }

  /** When tooth 1 passed, in turns that follow one another. */
  private static List<Double> starts(ToothEvents teeth) {
    List<Double> starts = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) != ToothKind.STRAY && teeth.tooth(i) == 1) {
        starts.add(teeth.time(i));
      }
    }
    return starts;
  }

  int size() {
    return starts.size() - 1;
  }

  /** Mean speed of a turn, rev/min. */
  double rpm(int turn) {
    return 60 / (starts.get(turn + 1) - starts.get(turn));
  }

  /** The turn whose speed is nearest to one. */
  int nearest(double rpm) {
    int best = 0;
    for (int i = 1; i < size(); i++) {
      best = Math.abs(rpm(i) - rpm) < Math.abs(rpm(best) - rpm) ? i : best;
    }
    return best;
  }

  /** Name and unit of the signal, for an axis. */
  String nameAndUnit() {
    return Wording.of("axis.unit", channel.name(), unit());
  }

  /** Unit of the signal. */
  String unit() {
    return channel.unit().isEmpty() ? Wording.of("axis.level") : channel.unit();
  }

  /** The signal of a turn over degrees after tooth 1. */
  Points turn(int turn) {
    Points points = new Points();
    double zero = angle.degreesAt(starts.get(turn));
    curve.trace(
        starts.get(turn),
        starts.get(turn + 1),
        COLUMNS,
        new Curve.Line() {
          @Override
          public void moveTo(double x, double y) {
            if (angle.covers(x)) {
              points.add(angle.degreesAt(x) - zero, y);
            }
          }

          @Override
          public void lineTo(double x, double y) {
            moveTo(x, y);
          }
        });
    return points;
  }
}
