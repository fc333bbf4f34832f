package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.Random;
import org.junit.jupiter.api.Test;
import toothmark.edges.SensorKind;
import toothmark.units.Interval;

class NoiseChecksTest {

  private final Scene scene = Scene.healthy();
  private final Random random = new Random(7);

  @Test
  void ignitionInterferenceFiresAndNothingElseIsReported() {
    for (int coil = 0; coil < 2; coil++) {
      for (double t : scene.sparkTimes(coil)) {
        scene.strays.add(t + 100e-6 + 50e-6 * random.nextDouble());
      }
    }
    Finding f = fires(new IgnitionInterferenceCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    quiet(new RandomNoiseCheck(), scene);
    quiet(new ExtraFeatureCheck(), scene);
  }

  @Test
  void ignitionInterferenceThatNothingFeelsIsOnlyWorthALook() {
    scene.spikes.addAll(scene.sparkTimes(0));
    Finding f = fires(new IgnitionInterferenceCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.evidence().get(2))
        .isEqualTo("None of them is taken for an edge, so nothing fails yet.");
  }

  /** A burst raises an arming level of a third of the last peak, so that teeth are missed. */
  @Test
  void ignitionInterferenceExplainsTeethMissedBehindABurst() {
    scene.spikes.addAll(scene.sparkTimes(0));
    double burst = scene.sparkTimes(0).get(5);
    scene.notReceived = (t, k, r) -> t > burst && t < burst + 0.03;
    assertThat(fires(new IgnitionInterferenceCheck(), scene).severity()).isEqualTo(Severity.FAULT);
    quiet(new IntermittentConnectionCheck(), scene);
    quiet(new InputStageDropoutCheck(), scene);
  }

  @Test
  void ignitionInterferenceStaysQuiet() {
    atRandom(20);
    quiet(new IgnitionInterferenceCheck(), scene);
  }

  @Test
  void ignitionInterferenceIsOnlySuspectedWhereNoCoilWasRecorded() {
    scene.coilsRecorded = false;
    for (int i = 0; i < 46; i++) {
      scene.strays.add(scene.timeOf(84 + 180 * i + 2 * random.nextGaussian()));
    }
    assertThat(fires(new IgnitionInterferenceCheck(), scene).severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void randomNoiseFires() {
    atRandom(20);
    Finding f = fires(new RandomNoiseCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void randomNoiseStaysQuiet() {
    quiet(new RandomNoiseCheck(), scene);
  }

  @Test
  void noiseAndInterferenceAreFoundTogether() {
    for (double t : scene.sparkTimes(0)) {
      scene.strays.add(t + 80e-6);
    }
    atRandom(20);
    fires(new IgnitionInterferenceCheck(), scene);
    fires(new RandomNoiseCheck(), scene);
  }

  @Test
  void extraFeatureFires() {
    for (int r = 0; r < 23; r++) {
      scene.strays.add(scene.timeOf(360 * r + 125 + 0.3 * random.nextGaussian()));
    }
    Finding f = fires(new ExtraFeatureCheck(), scene);
    assertThat(f.nextTest()).startsWith("Look behind tooth 13 ");
    quiet(new RandomNoiseCheck(), scene);
  }

  @Test
  void extraFeatureStaysQuiet() {
    atRandom(20);
    quiet(new ExtraFeatureCheck(), scene);
  }

  @Test
  void gapNoiseFires() {
    for (int r = 0; r < 23; r++) {
      scene.strays.add(scene.timeOf(360 * r + 343 + 14 * random.nextDouble()));
    }
    fires(new GapNoiseCheck(), scene);
    quiet(new RandomNoiseCheck(), scene);
  }

  @Test
  void gapNoiseStaysQuiet() {
    atRandom(20);
    quiet(new GapNoiseCheck(), scene);
  }

  @Test
  void starterNoiseFires() {
    start();
    for (int i = 0; i < 60; i++) {
      scene.strays.add(0.5 * random.nextDouble());
    }
    fires(new StarterNoiseCheck(), scene);
  }

  @Test
  void starterNoiseStaysQuiet() {
    start();
    for (int i = 0; i < 60; i++) {
      scene.strays.add(1.9 * random.nextDouble());
    }
    quiet(new StarterNoiseCheck(), scene);
  }

  private void start() {
    scene.fromRpm = 200;
    scene.toRpm = 1000;
    scene.seconds = 2;
  }

  @Test
  void periodicFiresOnStraysInStep() {
    for (double t = 0.003; t < 1.6; t += 1 / 50.0) {
      scene.strays.add(t + 3e-4 * random.nextGaussian());
    }
    fires(new PeriodicInterferenceCheck(), scene);
    quiet(new RandomNoiseCheck(), scene);
  }

  @Test
  void periodicFiresOnTeethInStep() {
    scene.humHertz = 50;
    scene.humDegrees = 0.4;
    Finding f = fires(new PeriodicInterferenceCheck(), scene);
    assertThat(f.evidence().get(0)).containsPattern("49\\.9|50\\.[01]");
  }

  @Test
  void periodicStaysQuiet() {
    atRandom(20);
    quiet(new PeriodicInterferenceCheck(), scene);
  }

  @Test
  void intermittentConnectionFires() {
    scene.lost = (t, k, r) -> (t > 0.4 && t < 0.42) || (t > 0.9 && t < 0.906);
    Finding f = fires(new IntermittentConnectionCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.where()).hasSize(2);
  }

  @Test
  void intermittentConnectionExplainsWhatAnOpenWirePicksUp() {
    scene.lost = (t, k, r) -> t > 0.4 && t < 0.45;
    for (int i = 0; i < 20; i++) {
      scene.strays.add(0.402 + 0.046 * random.nextDouble());
    }
    fires(new IntermittentConnectionCheck(), scene);
    quiet(new RandomNoiseCheck(), scene);
  }

  /** Teeth cannot be counted through a fifth of a second; the engine runs before and after it. */
  @Test
  void aLongSilenceOfARunningEngineIsAnOpening() {
    scene.undecided.add(new Interval(0.8, 1.0));
    Finding f = fires(new IntermittentConnectionCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence().get(0))
        .containsPattern("once, for about (19|20)\\d\\hms, and 10\\d teeth");
  }

  @Test
  void aSilenceOfAnEngineThatStopsIsNone() {
    scene.undecided.add(new Interval(0.8, 1.0));
    scene.fromRpm = 300;
    scene.toRpm = 300;
    quiet(new IntermittentConnectionCheck(), scene);
  }

  /** 20 rev/min of a starter that stalls: the coil of the sensor gives nothing to count. */
  @Test
  void aWaveThatDiesAsTheCrankStandsIsNoOpening() {
    scene.fromRpm = 20;
    scene.toRpm = 20;
    scene.seconds = 30;
    scene.lost = (time, k, r) -> time > 10 && time < 11;
    quiet(new IntermittentConnectionCheck(), scene);
  }

  /** Without a coil a bolt head and sparks at a fixed advance strew alike. */
  @Test
  void anExtraFeatureIsNotProvenWithoutACoil() {
    scene.coilsRecorded = false;
    for (int r = 0; r < 20; r++) {
      scene.strays.add(scene.timeOf(360.0 * r + 125));
    }
    Finding f = fires(new ExtraFeatureCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.against()).isNotEmpty();
  }

  /** An idle that hunts by 2 % pulls now more, now less, twice a turn: no hum. */
  @Test
  void aHuntingIdleIsNoHum() {
    scene.humHertz = 31.4;
    scene.humDegrees = 0.15;
    scene.secondHumHertz = 28.6;
    quiet(new PeriodicInterferenceCheck(), scene);
  }

  @Test
  void intermittentConnectionStaysQuiet() {
    scene.lost = (t, k, r) -> k == 7;
    quiet(new IntermittentConnectionCheck(), scene);
  }

  @Test
  void inputStageDropoutFires() {
    scene.notReceived = (t, k, r) -> (k * 31 + r * 17) % 97 == 5;
    fires(new InputStageDropoutCheck(), scene);
  }

  @Test
  void inputStageDropoutStaysQuiet() {
    quiet(new InputStageDropoutCheck(), scene);
  }

  private void atRandom(int count) {
    for (int i = 0; i < count; i++) {
      int tooth = 36 * random.nextInt(22) + 1 + random.nextInt(33);
      double between = 0.3 + 0.4 * random.nextDouble();
      scene.strays.add(scene.timeOf(10 * (tooth + between)));
    }
  }

  /** The longer a wave of height A stays above zero: by v / (pi A) of a tooth's time (its sine). */
  @Test
  void aZeroThatMovesWithTheCoilsCurrentIsTold() {
    charging();
    scene.groundVolts = 0.4;
    Finding f = fires(new GroundShiftCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence().get(0)).containsPattern("(39\\d|40\\d)\\hmV higher");
  }

  @Test
  void aZeroThatStaysIsQuiet() {
    charging();
    quiet(new GroundShiftCheck(), scene);
  }

  /** At one speed a charge always lies on the same teeth, which may be shaped so. */
  @Test
  void teethThatAlwaysSeeAChargeSayNothingOfTheGround() {
    scene.groundVolts = 0.4;
    scene.seconds = 3;
    cannotRun(new GroundShiftCheck(), scene, Words.of("any.few-charges"));
  }

  @Test
  void aSwitchingSensorHidesItsZero() {
    charging();
    scene.kind = SensorKind.HALL;
    cannotRun(new GroundShiftCheck(), scene, Words.of("any.no-zero"));
  }

  private void charging() {
    scene.toRpm = 3000;
    scene.seconds = 3;
  }
}
