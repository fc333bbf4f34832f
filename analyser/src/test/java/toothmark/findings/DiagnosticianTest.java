package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.timing.SensorLag;
import toothmark.timing.TdcSource;
import toothmark.timing.Timing;
import toothmark.units.Measured;
import toothmark.wheel.Orientation;
import toothmark.wheel.WheelPattern;

class DiagnosticianTest {

  private Scene scene;

  @BeforeEach
  void healthy() {
    scene = Scene.healthy();
  }

  private static List<String> ids(Diagnosis d) {
    return d.findings().stream().map(Finding::id).toList();
  }

  @Test
  void anOpenCircuitIsOneFindingAndCausesItsLosses() {
    scene.lost = (t, k, r) -> t > 0.4 && t < 0.43 || t > 0.9 && t < 0.906;
    for (int i = 0; i < 12; i++) {
      scene.strays.add(0.402 + 0.002 * i);
    }
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("intermittent-connection");
    assertThat(d.syncLossCauses()).isNotEmpty().containsOnly("intermittent-connection");
    assertThat(d.nextStep()).startsWith("Wiggle the sensor plug");
  }

  @Test
  void whatNoiseDoesToAWeakSignalIsPutDownToTheWeakSignal() {
    scene.fromRpm = 200;
    scene.toRpm = 200;
    scene.seconds = 4;
    scene.voltsAt200 = 0.15;
    Random random = new Random(8);
    for (int i = 0; i < 40; i++) {
      scene.strays.add(4 * random.nextDouble());
    }
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).contains("weak-signal").doesNotContain("random-noise-pickup");
    assertThat(d.syncLossCauses()).contains("weak-signal").doesNotContain("");
  }

  @Test
  void interferenceAndMisalignmentAreFoundTogether() {
    for (double t : scene.sparkTimes(0)) {
      scene.strays.add(t + 60e-6);
    }
    scene.alignment = Optional.of(alignment(3));
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("ignition-interference", "wheel-misaligned");
    assertThat(d.syncLossCauses()).isNotEmpty().containsOnly("ignition-interference");
    assertThat(d.verdict())
        .isEqualTo("Ignition sparks disturb the crank signal. There is one more fault below.");
  }

  @Test
  void whatRestsOnAnUncertainWheelIsNotProven() {
    scene.confidence = 0.6;
    scene.alignment = Optional.of(alignment(84));
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactlyInAnyOrder("wheel-uncertain", "wheel-misaligned");
    assertThat(d.findings()).allMatch(f -> f.severity() == Severity.WATCH);
  }

  @Test
  void aWrongWheelExplainsAllLosses() {
    scene.told = Optional.of(WheelPattern.of(36, 2));
    scene.followedTeeth = 34;
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("wheel-pattern-mismatch");
    assertThat(d.syncLossCauses()).isNotEmpty().containsOnly("wheel-pattern-mismatch");
  }

  @Test
  void aReversedSensorIsOneFinding() {
    scene.orientation = Orientation.REVERSED;
    scene.followedTeeth = 33;
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("sensor-polarity-reversed");
    assertThat(d.syncLossCauses()).allMatch("sensor-polarity-reversed"::equals);
  }

  @Test
  void anAngleThatWasNotCheckedIsSaidThoughNothingIsWrong() {
    scene.reference = Timing.Reference.NOMINAL;
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("tdc-unknown");
    assertThat(d.verdict())
        .startsWith("Nothing wrong was found")
        .endsWith(" The wheel's own angle was not checked.");
    assertThat(d.nextStep()).isEqualTo(d.findings().get(0).nextTest());
  }

  @Test
  void anAngleThatWasNotCheckedPushesNoFaultAside() {
    scene.reference = Timing.Reference.NOMINAL;
    scene.everyNthSparkAbsent = 5;
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("coil-misses", "tdc-unknown");
    assertThat(d.verdict()).isEqualTo(d.findings().get(0).title());
    assertThat(d.nextStep()).isEqualTo(d.findings().get(0).nextTest());
  }

  /** At one speed uneven pushing looks like run-out, and missing sparks make it. */
  @Test
  void missingSparksExplainRunOutThatIsNotProven() {
    scene.everyNthSparkAbsent = 5;
    wave(0.3);
    assertThat(ids(Diagnostician.diagnose(scene.seen()))).containsExactly("coil-misses");
  }

  @Test
  void missingSparksDoNotExplainRunOutThatIsProven() {
    scene.everyNthSparkAbsent = 5;
    scene.fromRpm = 1000;
    scene.toRpm = 3000;
    wave(0.3);
    assertThat(ids(Diagnostician.diagnose(scene.seen())))
        .containsExactly("wheel-run-out", "coil-misses");
  }

  @Test
  void whatCannotBeExaminedIsListedWithItsReason() {
    scene.decoded = false;
    scene.undecodable = "no wheel fits 800 edges.";
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(ids(d)).containsExactly("no-crank-signal");
    assertThat(d.notExamined())
        .contains(
            new NotExamined(
                "wheel-run-out", "The teeth could not be named: no wheel fits 800 edges."));
    assertThat(d.syncLossCauses()).hasSameSizeAs(scene.seen().receiver().losses());
  }

  @Test
  void eachReasonIsASentence() {
    scene.coilsRecorded = false;
    scene.cylinders = 0;
    scene.turnsLearned = 0;
    Diagnosis d = Diagnostician.diagnose(scene.seen());
    assertThat(d.notExamined()).isNotEmpty();
    assertThat(d.notExamined()).allMatch(n -> n.reason().matches("[A-Z].*\\."));
  }

  private void wave(double degrees) {
    for (int k = 1; k <= 35; k++) {
      double a = Math.toRadians(scene.wheel.degreesAfterTooth1(k));
      scene.offsets[k - 1] += degrees * Math.sin(a);
    }
  }

  private static Alignment alignment(double error) {
    Measured e = new Measured(error, 0.05);
    return new Alignment(
        TdcSource.MARK_CHANNEL,
        OptionalDouble.of(90),
        Optional.of(new Measured(90 + error, 0.05)),
        Optional.of(e),
        Optional.empty(),
        new SensorLag(new Measured(20e-6, 12e-6), SensorLag.KnownFrom.USUAL_FOR_SENSOR),
        Optional.empty(),
        new Alignment.Parts(0.02, 0.02, 0.02),
        Collections.nCopies(
            3, new AlignmentPoint(0.1, 900, 90, Double.NaN, AlignmentPoint.Use.KEPT)));
  }
}
