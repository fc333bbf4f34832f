package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jfree.data.Range;
import toothmark.capture.Channel;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** A signal turn by turn, or cycle by cycle, from tooth 1 to tooth 1, over the crank's angle. */
final class CrankTurns {

  private static final int COLUMNS = 720;
  private static final int HALVINGS = 40;

  private final Channel channel;
  private final Curve curve;
  private final AngleTimeline angle;
  private final List<Interval> laps;

  private CrankTurns(Channel channel, Curve curve, AngleTimeline angle, List<Interval> laps) {
    this.channel = channel;
    this.curve = curve;
    this.angle = angle;
    this.laps = laps;
  }

  /** The crank's turns; empty when none was decoded or there is no signal to draw. */
  static Optional<CrankTurns> of(Examination examination) {
    return examination
        .observations()
        .capture()
        .channel(examination.roles().crank())
        .filter(c -> SignalCurve.of(c.signal()).isPresent())
        .flatMap(c -> of(examination, c, Fold.TURN));
  }

  /** The turns or cycles of a channel; of bare instants as spikes. Empty when none was decoded. */
  static Optional<CrankTurns> of(Examination examination, Channel channel, Fold fold) {
    Optional<AngleTimeline> angle = examination.observations().crank().map(DecodedCrank::angle);
    if (angle.isEmpty() || examination.teeth().isEmpty()) {
      return Optional.empty();
    }
    List<Interval> laps = laps(examination.teeth().get(), angle.get(), fold);
    return laps.isEmpty()
        ? Optional.empty()
        : Optional.of(new CrankTurns(channel, SignalCurve.orSpikes(channel), angle.get(), laps));
  }

  /**
   * From tooth 1 to tooth 1. A cycle begins with a turn of even number; in which half of it
   * cylinder 1 fires is not known here.
   */
  private static List<Interval> laps(ToothEvents teeth, AngleTimeline angle, Fold fold) {
    List<Double> starts = new ArrayList<>();
    List<Long> turns = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) != ToothKind.STRAY && teeth.tooth(i) == 1 && angle.covers(teeth.time(i))) {
        starts.add(teeth.time(i));
        turns.add(Math.round(angle.degreesAt(teeth.time(i)) / CrankAngle.REVOLUTION));
      }
    }
    List<Interval> laps = new ArrayList<>();
    for (int i = 0; i + fold.turns() < starts.size(); i++) {
      boolean whole = turns.get(i + fold.turns()) == turns.get(i) + fold.turns();
      if (whole && turns.get(i) % fold.turns() == 0) {
        laps.add(new Interval(starts.get(i), starts.get(i + fold.turns())));
      }
    }
    return laps;
  }

  int size() {
    return laps.size();
  }

  /** Mean speed of a turn, rev/min. */
  double rpm(int turn) {
    return 60 / laps.get(turn).seconds();
  }

  /** The one in which an instant lies. */
  OptionalInt at(double timeSeconds) {
    return IntStream.range(0, size()).filter(i -> laps.get(i).contains(timeSeconds)).findFirst();
  }

  /** How far a turn has come at an instant of it, degrees; empty where the angle is not known. */
  OptionalDouble degreesAt(int turn, double timeSeconds) {
    return angle.covers(timeSeconds)
        ? OptionalDouble.of(
            angle.degreesAt(timeSeconds) - angle.degreesAt(laps.get(turn).startInclusive()))
        : OptionalDouble.empty();
  }

  /** When a turn has come so far, s. */
  double timeAt(int turn, double degrees) {
    double low = laps.get(turn).startInclusive();
    double high = laps.get(turn).endExclusive();
    double wanted = angle.degreesAt(low) + degrees;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (angle.degreesAt(middle) < wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Smallest and largest value of the signal between two angles of a turn. */
  Range up(int turn, double fromDegrees, double toDegrees) {
    return curve.up(timeAt(turn, fromDegrees), timeAt(turn, toDegrees));
  }

  /** Smallest and largest value of the signal. */
  Range up() {
    return curve.up(curve.across().getLowerBound(), curve.across().getUpperBound());
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
    trace(turn, COLUMNS, points.asLine());
    return points;
  }

  /** Draws a turn, its angle from 0, one point of the signal beyond either end. */
  void trace(int turn, int columns, Curve.Line line) {
    Interval lap = laps.get(turn);
    double zero = angle.degreesAt(lap.startInclusive());
    curve.trace(
        lap.startInclusive(),
        lap.endExclusive(),
        columns,
        new Curve.Line() {
          private boolean broken = true;

          @Override
          public void moveTo(double x, double y) {
            broken = true;
            lineTo(x, y);
          }

          @Override
          public void lineTo(double x, double y) {
            if (!angle.covers(x)) {
              broken = true;
            } else if (broken) {
              line.moveTo(angle.degreesAt(x) - zero, y);
              broken = false;
            } else {
              line.lineTo(angle.degreesAt(x) - zero, y);
            }
          }
        });
  }
}
