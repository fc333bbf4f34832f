package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import toothmark.ignition.SketchedEngine;
import toothmark.rotation.AngleTimeline;

class LogMatcherTest {

  private static final double ROW = 0.05;
  private static final ScheduledSpeed NOW = new ScheduledSpeed(0, 360);
  private static final DoubleUnaryOperator TABLE =
      n -> 10 + Math.min(22, Math.max(0, n - 700) * 0.008);

  private final SketchedEngine engine = SketchedEngine.sweep(6, 900, 4500);
  private final AngleTimeline timeline = engine.timeline(10, 0);

  private interface Advance {
    double at(double rpm, double time);
  }

  /** A log on a clock that is late by some seconds and fast by some parts per million. */
  private ControllerLog log(
      SketchedEngine of, double shift, double partsPerMillion, Advance advance) {
    int rows = (int) ((of.seconds() - 0.2) / ROW);
    double[] t = new double[rows];
    double[] n = new double[rows];
    double[] a = new double[rows];
    for (int i = 0; i < rows; i++) {
      double real = 0.1 + i * ROW;
      t[i] = real * (1 + partsPerMillion * 1e-6) - shift;
      n[i] = Math.rint(of.rpmAt(real - 0.01));
      a[i] = Math.rint(10 * advance.at(n[i], real)) / 10;
    }
    return new ControllerLog(t, n, a);
  }

  private static LogMatch match(CommandedAdvance commanded) {
    return commanded.match().orElseThrow();
  }

  @Test
  void findsTheClockAndTakesAdvanceBySpeed() {
    CommandedAdvance commanded =
        LogMatcher.match(log(engine, -37.4, 0, (n, t) -> TABLE.applyAsDouble(n)), timeline);

    LogMatch match = match(commanded);
    assertThat(match.outcome()).isEqualTo(LogMatch.Outcome.MATCHED);
    assertThat(match.shiftSeconds().orElseThrow().value())
        .as("the logged speed is 10 ms old, which no one can see")
        .isCloseTo(-37.4, within(0.02));
    assertThat(match.shiftSeconds().orElseThrow().standardUncertainty())
        .isCloseTo(ROW / Math.sqrt(12), within(1e-9));
    assertThat(match.correlation()).isGreaterThan(0.999);
    assertThat(match.speeds())
        .hasSizeGreaterThan(50)
        .allSatisfy(
            s -> assertThat(s.rpm()).isCloseTo(engine.rpmAt(s.timeSeconds()), within(60.0)));
    for (double time = 0.5; time < 5.5; time += 0.25) {
      double rpm = ScheduledSpeed.USUAL.rpm(time, timeline);
      assertThat(commanded.at(time, timeline, ScheduledSpeed.USUAL).orElseThrow())
          .isCloseTo(TABLE.applyAsDouble(rpm), within(0.12));
    }
  }

  @Test
  void takesAdvanceByTimeWhereLoadMatters() {
    Advance byLoad = (n, t) -> TABLE.applyAsDouble(n) - 8 * Math.sin(3 * t);

    CommandedAdvance commanded = LogMatcher.match(log(engine, 5, 0, byLoad), timeline);

    assertThat(match(commanded).outcome()).isEqualTo(LogMatch.Outcome.MATCHED);
    for (double time = 0.5; time < 5.5; time += 0.25) {
      assertThat(commanded.at(time, timeline, NOW).orElseThrow())
          .isCloseTo(byLoad.at(engine.rpmAt(time - 0.01), time), within(1.2));
    }
  }

  @Test
  void refusesALogOfAnotherRun() {
    SketchedEngine other = new SketchedEngine(6, t -> 2700 + 1500 * Math.sin(4 * t));

    CommandedAdvance commanded =
        LogMatcher.match(log(other, 0, 0, (n, t) -> TABLE.applyAsDouble(n)), timeline);

    assertThat(match(commanded).outcome()).isEqualTo(LogMatch.Outcome.REFUSED);
    assertThat(match(commanded).reason()).startsWith("The log does not fit the capture");
    assertThat(commanded.at(3, timeline, NOW)).isEmpty();
  }

  @Test
  void atOneSpeedAdvanceFollowsFromSpeedOrNotAtAll() {
    SketchedEngine idle = new SketchedEngine(6, t -> 900 + 8 * Math.sin(5 * t));
    AngleTimeline idling = idle.timeline(10, 0);

    CommandedAdvance commanded =
        LogMatcher.match(log(idle, 12, 0, (n, t) -> TABLE.applyAsDouble(n)), idling);

    assertThat(match(commanded).outcome()).isEqualTo(LogMatch.Outcome.BY_SPEED);
    assertThat(match(commanded).shiftSeconds()).isEmpty();
    assertThat(match(commanded).speeds()).isEmpty();
    assertThat(commanded.at(3, idling, NOW).orElseThrow())
        .isCloseTo(TABLE.applyAsDouble(900), within(0.15));
  }

  @Test
  void findsTheDriftOfAClock() {
    SketchedEngine long60 =
        new SketchedEngine(60, t -> 2500 + 1200 * Math.sin(0.9 * t) + 300 * Math.sin(2.7 * t));

    CommandedAdvance commanded =
        LogMatcher.match(
            log(long60, 3, 2000, (n, t) -> TABLE.applyAsDouble(n)), long60.timeline(10, 0));

    assertThat(match(commanded).driftPartsPerMillion()).isCloseTo(2000, within(400.0));
    assertThat(match(commanded).speeds())
        .as("by a clock that is mended for its drift")
        .allSatisfy(
            s -> assertThat(s.rpm()).isCloseTo(long60.rpmAt(s.timeSeconds()), within(60.0)));
  }

  @Test
  void aShortLogIsRefusedWithItsLength() {
    ControllerLog few =
        new ControllerLog(new double[] {0, 1}, new double[] {900, 900}, new double[] {10, 10});

    assertThat(match(LogMatcher.match(few, timeline)).reason())
        .isEqualTo("The log has 2 rows; at least 7 are needed.");
  }
}
