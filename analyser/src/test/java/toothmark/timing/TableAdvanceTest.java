package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import toothmark.ignition.SketchedEngine;
import toothmark.rotation.AngleTimeline;

/** A table that is a plane, so that what it commands anywhere is known without reading it. */
class TableAdvanceTest {

  private static final double ROW = 0.05;
  private static final ScheduledSpeed LEAD = ScheduledSpeed.USUAL;
  private static final ScheduledSpeed NOW = new ScheduledSpeed(0, 360);
  private static final IgnitionTable PLANE =
      new IgnitionTable(
          Path.of("advance.csv"),
          List.of(500.0, 2000.0, 5000.0),
          List.of(20.0, 100.0),
          List.of(
              List.of(plane(500, 20), plane(2000, 20), plane(5000, 20)),
              List.of(plane(500, 100), plane(2000, 100), plane(5000, 100))));

  private final SketchedEngine engine = SketchedEngine.sweep(6, 900, 4500);
  private final AngleTimeline timeline = engine.timeline(10, 0);

  private static double plane(double rpm, double load) {
    return 5 + 0.006 * rpm - 0.15 * load;
  }

  private static ControllerLog log(SketchedEngine of, double shift, DoubleUnaryOperator load) {
    int rows = (int) ((of.seconds() - 0.2) / ROW);
    double[] t = new double[rows];
    double[] n = new double[rows];
    double[] l = new double[rows];
    for (int i = 0; i < rows; i++) {
      double real = 0.1 + i * ROW;
      t[i] = real + shift;
      n[i] = Math.rint(of.rpmAt(real));
      l[i] = load.applyAsDouble(real);
    }
    return new ControllerLog(t, n, new double[0], l);
  }

  @Test
  void atAStatedLoadItGoesByTheCapturesSpeed() {
    CommandedAdvance commanded = TableAdvance.at(PLANE, 60);

    for (double time = 0.5; time < 5.5; time += 0.25) {
      assertThat(commanded.at(time, timeline, LEAD).orElseThrow())
          .isCloseTo(plane(LEAD.rpm(time, timeline), 60), within(1e-9));
    }
    assertThat(commanded.match()).isEmpty();
  }

  @Test
  void atTheLoggedLoadItGoesByTheLogsClock() {
    DoubleUnaryOperator load = t -> 60 + 30 * Math.sin(3 * t);

    CommandedAdvance commanded = TableAdvance.at(PLANE, log(engine, 37.4, load), timeline);

    assertThat(commanded.match().orElseThrow().outcome()).isEqualTo(LogMatch.Outcome.MATCHED);
    assertThat(commanded.match().orElseThrow().reason())
        .endsWith("load is taken at the spark's own time.");
    for (double time = 0.5; time < 5.5; time += 0.25) {
      double rpm = NOW.rpm(time, timeline);
      assertThat(commanded.at(time, timeline, NOW).orElseThrow())
          .as("the clock is known to %s s, in which load moves advance by 0.3 degrees", ROW / 2)
          .isCloseTo(plane(rpm, load.applyAsDouble(time)), within(0.4));
    }
  }

  @Test
  void whereALoadIsNotKnownNothingIsCommanded() {
    DoubleUnaryOperator load = t -> t > 2 && t < 3 ? Double.NaN : 60;

    CommandedAdvance commanded = TableAdvance.at(PLANE, log(engine, 0, load), timeline);

    assertThat(commanded.at(4, timeline, LEAD)).isPresent();
    assertThat(commanded.at(2.5, timeline, LEAD)).isEmpty();
    assertThat(commanded.at(0.02, timeline, LEAD)).as("before the log").isEmpty();
  }

  @Test
  void atOneSpeedALoadThatStaysIsEnoughAndOneThatMovesIsNot() {
    SketchedEngine idle = new SketchedEngine(6, t -> 900 + 8 * Math.sin(5 * t));
    AngleTimeline idling = idle.timeline(10, 0);

    CommandedAdvance steady = TableAdvance.at(PLANE, log(idle, 12, t -> 35), idling);
    CommandedAdvance moving =
        TableAdvance.at(PLANE, log(idle, 12, t -> 35 + 20 * Math.sin(2 * t)), idling);

    assertThat(steady.match().orElseThrow().outcome()).isEqualTo(LogMatch.Outcome.BY_SPEED);
    assertThat(steady.at(3, idling, LEAD).orElseThrow()).isCloseTo(plane(900, 35), within(0.1));
    assertThat(moving.match().orElseThrow().outcome()).isEqualTo(LogMatch.Outcome.REFUSED);
    assertThat(moving.at(3, idling, LEAD)).isEmpty();
  }
}
