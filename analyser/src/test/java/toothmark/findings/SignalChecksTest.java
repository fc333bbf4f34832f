package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.edges.SensorKind;
import toothmark.wheel.Orientation;
import toothmark.wheel.WheelPattern;

class SignalChecksTest {

  private final Scene scene = Scene.healthy();

  @Test
  void noCrankSignalFiresOnNoise() {
    scene.decoded = false;
    scene.undecodable = "no wheel fits 400 edges.";
    scene.low = -0.02;
    scene.high = 0.02;
    Finding f = fires(new NoCrankSignalCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.title()).isEqualTo("No signal comes from the crank sensor.");
  }

  @Test
  void noCrankSignalStaysQuiet() {
    quiet(new NoCrankSignalCheck(), scene);
  }

  @Test
  void captureTooShortFires() {
    scene.seconds = 0.1;
    Finding f = fires(new CaptureTooShortCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence().get(0)).startsWith("In 100\u202fms the crank makes 1.5 turns;");
  }

  @Test
  void captureTooShortFiresOnAnUndecodedStumpAndNoCrankSignalLeavesItAlone() {
    scene.seconds = 0.05;
    scene.decoded = false;
    scene.undecodable = "no gap was seen twice.";
    fires(new CaptureTooShortCheck(), scene);
    quiet(new NoCrankSignalCheck(), scene);
  }

  /** Of 34 teeth without a gap nobody knows how many turns they are. */
  @Test
  void captureTooShortFiresWhereNoGapCouldShow() {
    scene.wheel = WheelPattern.plain(6);
    scene.offsets = new double[6];
    scene.strengths = Scene.ones(6);
    scene.seconds = 0.38;
    fires(new CaptureTooShortCheck(), scene);
    scene.told = Optional.of(scene.wheel);
    quiet(new CaptureTooShortCheck(), scene);
  }

  @Test
  void captureTooShortStaysQuiet() {
    quiet(new CaptureTooShortCheck(), scene);
  }

  @Test
  void captureTooSlowFires() {
    scene.samplesPerEdge = 4;
    Finding f = fires(new CaptureTooSlowCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.nextTest())
        .isEqualTo("Record at 240\u202fkHz or more, or at a lower engine speed.");
  }

  /** Teeth between the samples leave volts that jump about; a still sensor's noise is no volt. */
  @Test
  void captureTooSlowFiresWhereNotEvenTeethCanBeCounted() {
    scene.decoded = false;
    scene.undecodable = "no wheel makes them more than chance would.";
    scene.noise = 1.2;
    fires(new CaptureTooSlowCheck(), scene);
    quiet(new NoCrankSignalCheck(), scene);
    scene.low = -0.3;
    scene.high = 0.3;
    scene.noise = 0.12;
    scene.samplesPerEdge = 2;
    quiet(new CaptureTooSlowCheck(), scene);
    fires(new NoCrankSignalCheck(), scene);
  }

  @Test
  void captureTooSlowStaysQuiet() {
    quiet(new CaptureTooSlowCheck(), scene);
  }

  @Test
  void polarityReversedFires() {
    scene.orientation = Orientation.REVERSED;
    Finding f = fires(new SensorPolarityReversedCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void polarityReversedStaysQuiet() {
    quiet(new SensorPolarityReversedCheck(), scene);
  }

  @Test
  void polarityCannotBeSeenOnASwitch() {
    scene.kind = SensorKind.HALL;
    cannotRun(
        new SensorPolarityReversedCheck(),
        scene,
        "Only the wave of a variable-reluctance sensor shows which way round it is wired.");
  }

  @Test
  void wrongTimingEdgeFires() {
    scene.kind = SensorKind.HALL;
    scene.fallingJitterPitches = 0.02;
    scene.risingJitterPitches = 0.002;
    Finding f = fires(new WrongTimingEdgeCheck(), scene);
    assertThat(f.nextTest()).startsWith("Set the controller to the rising edge");
  }

  @Test
  void wrongTimingEdgeStaysQuietOnTheSteadyEdge() {
    scene.kind = SensorKind.HALL;
    scene.fallingJitterPitches = 0.002;
    scene.risingJitterPitches = 0.02;
    quiet(new WrongTimingEdgeCheck(), scene);
  }

  @Test
  void clippedFires() {
    scene.clippedShare = 0.04;
    Finding f = fires(new SensorClippedCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void clippedStaysQuiet() {
    quiet(new SensorClippedCheck(), scene);
  }

  @Test
  void weakSignalFires() {
    cranking();
    scene.voltsAt200 = 0.3;
    scene.notReceived = (t, k, r) -> t < 0.3 && k % 5 == 0;
    Finding f = fires(new WeakSignalCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
  }

  /** Height in proportion to speed, from the swing of flux: v = dF/dt. */
  @Test
  void weakSignalGivesTheHeightAtCrankingSpeed() {
    cranking();
    scene.voltsAt200 = 0.15;
    Finding f = fires(new WeakSignalCheck(), scene);
    assertThat(f.evidence().get(0))
        .contains("is 150\u202fmV from peak to peak at 200\u202frev/min");
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void weakSignalStaysQuiet() {
    cranking();
    quiet(new WeakSignalCheck(), scene);
  }

  /** Compressions slow the crank, the teeth that pass meanwhile are too small now and then. */
  private void listOfASlowStarter() {
    scene.starter = new StarterModel(new double[] {1, 1, 1, 1}, 200, 90, 360 * 14);
    scene.seconds = scene.starter.timeOf(360 * 13);
    scene.kind = SensorKind.EDGES_ONLY;
  }

  @Test
  void aListOfEdgesShowsAWeakSignalByWhichTeethItMisses() {
    listOfASlowStarter();
    Random random = new Random(5);
    scene.lost = (t, k, r) -> scene.rpmAt(t) * (1 + 0.06 * random.nextGaussian()) < 150;
    Finding f = fires(new WeakSignalCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    List<Finding> all = Diagnostician.diagnose(scene.seen()).findings();
    assertThat(all).extracting(Finding::id).startsWith("weak-signal");
    assertThat(all).extracting(Finding::id).doesNotContain("intermittent-connection");
    assertThat(all).extracting(Finding::id).doesNotContain("damaged-tooth");
  }

  @Test
  void aListOfEdgesThatMissesTeethAtAnySpeedShowsNoWeakSignal() {
    listOfASlowStarter();
    Random random = new Random(5);
    scene.lost = (t, k, r) -> random.nextInt(16) == 0;
    cannotRun(
        new WeakSignalCheck(), scene, "Only a wave has an amplitude that depends on the air gap.");
  }

  @Test
  void signalFadingFires() {
    scene.fadesTo = 0.5;
    assertThat(fires(new SignalFadingCheck(), scene).severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void signalFadingStaysQuiet() {
    quiet(new SignalFadingCheck(), scene);
  }

  @Test
  void probeFactorFires() {
    scene.voltsAt200 = 12;
    fires(new ProbeFactorCheck(), scene);
  }

  /** As high as in the test above, but in counts of a converter. */
  @Test
  void countsSayNothingOfTheProbe() {
    scene.voltsAt200 = 12;
    scene.unit = "count";
    cannotRun(
        new ProbeFactorCheck(),
        scene,
        "The capture holds the counts of a recorder and does not say how many volts one is;"
            + " give the scale in the job sheet.");
  }

  /** A sound sensor of 1.5 V on the starter through a probe that divides by ten. */
  @Test
  void aTenthOfTheHeightOfAnEngineThatRunsIsTheProbesFirst() {
    scene.voltsAt200 = 0.15;
    assertThat(fires(new ProbeFactorCheck(), scene).title()).contains("too low");
    Finding weak = fires(new WeakSignalCheck(), scene);
    assertThat(weak.severity()).isEqualTo(Severity.WATCH);
    assertThat(Diagnostician.diagnose(scene.seen()).findings())
        .extracting(Finding::id)
        .startsWith("probe-factor", "weak-signal");
  }

  @Test
  void theHeightOfAWaveThatIsCutOffSaysNothingOfTheProbe() {
    scene.voltsAt200 = 0.15;
    scene.clippedShare = 0.04;
    cannotRun(
        new ProbeFactorCheck(),
        scene,
        "The wave is cut off, so its height is not known: record with a wider range.");
  }

  @Test
  void aWeakSignalThatLosesTeethIsNoProbes() {
    cranking();
    scene.voltsAt200 = 0.15;
    scene.notReceived = (t, k, r) -> t < 0.3 && k % 5 == 0;
    quiet(new ProbeFactorCheck(), scene);
  }

  @Test
  void probeFactorStaysQuiet() {
    quiet(new ProbeFactorCheck(), scene);
  }

  @Test
  void acCoupledFiresWhereASwitchFloatsAboutZero() {
    scene.kind = SensorKind.HALL;
    scene.low = -2.1;
    scene.high = 2.9;
    assertThat(fires(new AcCoupledCheck(), scene).nextTest()).startsWith("Set the channel to DC");
  }

  /** The last has spikes of a starter on a switch between 0 and 5 V. */
  @ParameterizedTest
  @CsvSource({"0.1, 5, 2.5", "-0.2, 4.9, 2.4", "-5, 0.1, -2.5", "1.4, 5, 3", "-3.6, 8.3, 1.9"})
  void acCoupledStaysQuiet(double low, double high, double mean) {
    scene.kind = SensorKind.HALL;
    scene.low = low;
    scene.high = high;
    scene.mean = mean;
    quiet(new AcCoupledCheck(), scene);
  }

  @Test
  void acCoupledStaysQuietOnACoilWhichHasNoDirectVoltage() {
    quiet(new AcCoupledCheck(), scene);
  }

  @Test
  void hallLevelsFires() {
    scene.kind = SensorKind.HALL;
    scene.low = 1.4;
    scene.high = 5;
    assertThat(fires(new HallLevelsCheck(), scene).nextTest()).contains("sensor's ground");
  }

  @Test
  void hallLevelsStaysQuiet() {
    scene.kind = SensorKind.HALL;
    scene.low = 0.1;
    scene.high = 5;
    quiet(new HallLevelsCheck(), scene);
  }

  /** A logic analyser writes states, not volts. */
  @Test
  void hallLevelsSaysNothingOfStates() {
    scene.kind = SensorKind.HALL;
    scene.low = 0;
    scene.high = 1;
    cannotRun(new HallLevelsCheck(), scene, "The channel holds states, 0 and 1, and no voltages.");
  }

  private void cranking() {
    scene.fromRpm = 150;
    scene.toRpm = 300;
    scene.seconds = 2;
  }
}
