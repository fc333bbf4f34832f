package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.examine;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import toothmark.units.Interval;

class RunningChecksTest {

  private final Scene scene = Scene.healthy();

  @Test
  void slowCrankingFires() {
    speed(80, 110, 3);
    assertThat(fires(new SlowCrankingCheck(), scene).evidence().get(0))
        .startsWith("Cranking speed is 9");
  }

  @Test
  void slowCrankingStaysQuiet() {
    speed(180, 220, 3);
    quiet(new SlowCrankingCheck(), scene);
  }

  @Test
  void slowCrankingNeedsCranking() {
    cannotRun(new SlowCrankingCheck(), scene, "The capture holds less than two turns of cranking.");
  }

  @Test
  void engineStopsFires() {
    speed(900, 60, 2);
    scene.restSeconds = 1;
    assertThat(fires(new EngineStopsCheck(), scene).severity()).isEqualTo(Severity.NOTE);
  }

  @Test
  void engineStopsStaysQuiet() {
    quiet(new EngineStopsCheck(), scene);
  }

  @Test
  void kickBackFires() {
    speed(300, 60, 2);
    scene.undecided.add(new Interval(1.95, 1.99));
    fires(new KickBackCheck(), scene);
  }

  /** A crank that comes to rest rocks; that is no kick-back. */
  @Test
  void standstillIsNoKickBack() {
    speed(300, 60, 2);
    scene.undecided.add(new Interval(1.5, 1.9));
    scene.standstills.add(new Interval(1.5, 1.9));
    quiet(new KickBackCheck(), scene);
    assertThat(fires(new EngineStopsCheck(), scene).title())
        .startsWith("The crank stands still within the record: 1.500 to 1.900");
  }

  @Test
  void kickBackStaysQuietAtSpeed() {
    scene.undecided.add(new Interval(1.0, 1.1));
    quiet(new KickBackCheck(), scene);
  }

  @Test
  void crankingLossesAreNormal() {
    speed(180, 220, 2);
    scene.notReceived = (t, k, r) -> k == 20 && r == 3;
    assertThat(fires(new CrankingLossesCheck(), scene).severity()).isEqualTo(Severity.NOTE);
  }

  @Test
  void oneLossATurnWhileCrankingIsMoreThanAHandful() {
    speed(180, 220, 5);
    scene.notReceived = (t, k, r) -> k == 20;
    Finding f = fires(new CrankingLossesCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.title()).contains("in most turns");
  }

  @Test
  void crankingLossesStaysQuiet() {
    quiet(new CrankingLossesCheck(), scene);
  }

  @Test
  void unexplainedLossesStaysQuietWhereALostToothExplainsThem() {
    scene.notReceived = (t, k, r) -> k == 20 && r == 3;
    quiet(new UnexplainedLossesCheck(), scene);
  }

  /** A receiver told fewer teeth loses sync on a signal in which nothing is wrong. */
  @Test
  void unexplainedLossesFires() {
    scene.followedTeeth = 33;
    assertThat(fires(new UnexplainedLossesCheck(), scene).severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void unevenCylindersFires() {
    scene.weakCylinder = 0.03;
    scene.seconds = 3;
    Finding f = fires(new UnevenCylindersCheck(), scene);
    assertThat(f.evidence()).hasSize(1);
    assertThat(f.nextTest()).startsWith("To learn which cylinder it is, record top dead centre");
  }

  /** The scene's speed gains most at 180 degrees after tooth 1 and least a turn later. */
  @Test
  void unevenCylindersNamesThePairWhoseTopDeadCentreComesBeforeTheLeastGain() {
    scene.weakCylinder = 0.03;
    scene.seconds = 3;
    List<Integer> order = List.of(1, 3, 4, 2);
    scene.firing =
        new Observations.Firing(order, Observations.Statement.STATED, OptionalDouble.of(90));
    assertThat(fires(new UnevenCylindersCheck(), scene).evidence().get(1))
        .isEqualTo("It is cylinder 1 or 4: the speed gains least behind their top dead centre.");
    scene.firing =
        new Observations.Firing(order, Observations.Statement.STATED, OptionalDouble.of(270));
    assertThat(fires(new UnevenCylindersCheck(), scene).evidence().get(1))
        .startsWith("It is cylinder 3 or 2: ");
  }

  @Test
  void unevenCylindersSaysWhereTheSpeedChangesTooMuch() {
    scene.weakCylinder = 0.03;
    scene.seconds = 3;
    scene.humDegrees = 10;
    scene.humHertz = 3.3;
    assertThat(examine(new UnevenCylindersCheck(), scene).reason())
        .startsWith("The speed sags or wanders too much: cylinders differ by ");
  }

  @Test
  void unevenCylindersNeedsAnEngineThatFiresEvenly() {
    scene.weakCylinder = 0.03;
    scene.seconds = 3;
    scene.firing =
        new Observations.Firing(List.of(), Observations.Statement.STATED, OptionalDouble.of(90));
    assertThat(examine(new UnevenCylindersCheck(), scene).reason())
        .startsWith("The engine fires at uneven angles");
  }

  @Test
  void unevenCylindersStaysQuiet() {
    scene.seconds = 3;
    quiet(new UnevenCylindersCheck(), scene);
  }

  private void speed(double from, double to, double seconds) {
    scene.fromRpm = from;
    scene.toRpm = to;
    scene.seconds = seconds;
  }
}
