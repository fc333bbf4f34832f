package toothmark.chart;

import java.util.List;
import java.util.Optional;
import toothmark.examination.Examination;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** Which part of a capture to show closely. */
final class Excerpt {

  /** Where the speed is not known: long enough for a few teeth at cranking speed. */
  private static final double BLIND_SECONDS = 0.05;

  private static final double TURNS_BESIDE = 0.6;
  private static final double MOST_TURNS = 3;

  private Excerpt() {}

  /** A little more than a turn around an instant, a few turns from the start of a longer span. */
  static Interval around(Examination e, Interval about) {
    double turn = turnSeconds(e, about.startInclusive());
    double beside = TURNS_BESIDE * turn;
    double end = Math.min(about.endExclusive(), about.startInclusive() + MOST_TURNS * turn);
    Interval whole = e.observations().capture().span();
    double from = clamp(about.startInclusive() - beside, whole);
    return new Interval(from, Math.max(from, clamp(end + beside, whole)));
  }

  /** The first sync loss of a running engine, else the first odd event, else the middle. */
  static Optional<Interval> mostTelling(Examination e) {
    List<SyncLoss> losses = e.observations().receiver().losses();
    Optional<SyncLoss> running =
        losses.stream().filter(l -> l.phase() == SyncLoss.Phase.RUNNING).findFirst();
    double instant =
        running
            .or(() -> losses.stream().findFirst())
            .map(SyncLoss::timeSeconds)
            .or(() -> e.teeth().flatMap(Excerpt::firstOdd))
            .orElseGet(
                () -> {
                  Interval whole = e.observations().capture().span();
                  return (whole.startInclusive() + whole.endExclusive()) / 2;
                });
    return Optional.of(new Interval(instant, instant));
  }

  private static Optional<Double> firstOdd(ToothEvents teeth) {
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) != ToothKind.SEEN) {
        return Optional.of(teeth.time(i));
      }
    }
    return Optional.empty();
  }

  private static double turnSeconds(Examination e, double instant) {
    Optional<AngleTimeline> angle = e.observations().crank().map(DecodedCrank::angle);
    return angle.isPresent() && angle.get().covers(instant)
        ? 60 / angle.get().rpmAt(instant)
        : BLIND_SECONDS;
  }

  private static double clamp(double time, Interval whole) {
    return Math.max(whole.startInclusive(), Math.min(whole.endExclusive(), time));
  }
}
