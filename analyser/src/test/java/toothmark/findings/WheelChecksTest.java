package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.examine;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import toothmark.edges.SensorKind;
import toothmark.wheel.WheelPattern;

class WheelChecksTest {

  private final Scene scene = Scene.healthy();

  /**
   * Eccentricity e on radius R moves teeth by e/R rad each way: 0.25 mm on 75 mm by 0.191 degrees
   * (encoder makers' table, from memory).
   */
  @Test
  void runOutFiresAndGivesTheOffset() {
    sweep();
    wave(1, Math.toDegrees(0.25 / 75));
    Finding f = fires(new WheelRunOutCheck(), scene);
    assertThat(f.evidence().get(0)).containsPattern("0\\.191\\h±\\h0\\.020");
    assertThat(f.evidence().get(1))
        .matches("That is 0\\.25\\hmm off centre on a circle of 150\\hmm.*");
  }

  @Test
  void runOutOfTheSameAngleAtAllSpeedsIsAFault() {
    sweep();
    wave(1, 0.3);
    assertThat(fires(new WheelRunOutCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void runOutAtOneSpeedIsOnlyWorthALook() {
    wave(1, 0.3);
    assertThat(fires(new WheelRunOutCheck(), scene).severity()).isEqualTo(Severity.WATCH);
  }

  /** The engine shakes at 180 Hz with 6 swings a turn at 1800, 4 at 2700, 2 at 5400 rev/min. */
  @Test
  void aSensorThatShakesIsTold() {
    shaking(180);
    scene.ringsStronger = 0.1;
    Finding f = fires(new SensorBracketCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence().get(0)).containsPattern("by up to 0\\.[567]\\d*°.*about 1[78]\\d\\hHz");
    quiet(new CrankTwistCheck(), scene);
  }

  @Test
  void aTwistLeavesTheStrengthOfTheSignal() {
    shaking(180);
    assertThat(fires(new CrankTwistCheck(), scene).severity()).isEqualTo(Severity.WATCH);
    quiet(new SensorBracketCheck(), scene);
  }

  /** A switching sensor has no strength: both are possible. */
  @Test
  void withoutStrengthAShakingSensorIsOnlyWorthALook() {
    shaking(180);
    scene.kind = SensorKind.HALL;
    Finding f = fires(new SensorBracketCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.against()).isNotEmpty();
  }

  /** What keeps to a number of swings a turn is the engine's own, however it grows. */
  @Test
  void swingsOfOneOrderAreNoResonance() {
    shaking(0);
    scene.weakCylinder = 2e-3;
    quiet(new SensorBracketCheck(), scene);
    quiet(new CrankTwistCheck(), scene);
  }

  @Test
  void atOneSpeedNothingIsSaidOfAResonance() {
    scene.ringing = new Ringing(180);
    cannotRun(new SensorBracketCheck(), scene, Words.of("any.no-sweep"));
    cannotRun(new CrankTwistCheck(), scene, Words.of("any.no-sweep"));
  }

  private void shaking(double hertz) {
    scene.ringing = new Ringing(hertz);
    scene.fromRpm = 1000;
    scene.toRpm = 4500;
    scene.seconds = 3;
  }

  /** A rim off centre is nearest to the sensor a quarter of a turn from where it lags most. */
  @Test
  void runOutAtOneSpeedIsProvenByTheStrengthOfTheSignal() {
    wave(1, 0.3);
    for (int k = 1; k <= 35; k++) {
      double a = Math.toRadians(scene.wheel.degreesAfterTooth1(k));
      scene.strengths[k - 1] = 1 + 0.1 * Math.cos(a);
    }
    Finding f = fires(new WheelRunOutCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence().get(2)).containsPattern("by 10(\\.0)?\\h% each way");
  }

  /** On eleven teeth two that stand beside the gap, where the field is another, make a wave. */
  @Test
  void runOutStaysQuietWhereOnlyTeethBesideTheGapAreStronger() {
    scene.wheel = WheelPattern.of(12, 1);
    scene.fromRpm = 200;
    scene.toRpm = 200;
    scene.seconds = 6;
    scene.offsets = new double[11];
    scene.strengths = Scene.ones(11);
    scene.strengths[0] = 1.33;
    scene.strengths[10] = 1.33;
    scene.turnsLearned = 0;
    assertThat(examine(new WheelRunOutCheck(), scene).finding()).isEmpty();
  }

  /** Where fields overlap much the gap sets both apart alike; what one has more is its own. */
  @Test
  void damagedToothToldFromTheOverlapOfFieldsBesideTheGap() {
    scene.strengths[0] = 1.4;
    scene.strengths[34] = 1.4;
    scene.offsets[0] = 0.6;
    scene.offsets[34] = -0.6;
    quiet(new DamagedToothCheck(), scene);
    scene.offsets[34] = -1.6;
    assertThat(fires(new DamagedToothCheck(), scene).title())
        .isEqualTo("Tooth 35 of the trigger wheel is bent or damaged.");
  }

  @Test
  void damagedToothPassesOverStrongTeethBesideTheGapWhereItLooksForWeakOnes() {
    scene.strengths[0] = 3;
    scene.strengths[34] = 3;
    quiet(new DamagedToothCheck(), scene);
  }

  @Test
  void runOutStaysQuietOnATrueWheel() {
    wave(1, 0.03);
    quiet(new WheelRunOutCheck(), scene);
  }

  @Test
  void runOutStaysQuietOnABentTooth() {
    scene.offsets[10] = 1.8;
    quiet(new WheelRunOutCheck(), scene);
  }

  @Test
  void runOutNeedsTurns() {
    scene.turnsLearned = 2;
    cannotRun(
        new WheelRunOutCheck(),
        scene,
        "The form of the wheel shows only over five turns or more at a running speed.");
  }

  @Test
  void ovalFires() {
    scene.cylinders = 6;
    sweep();
    wave(2, 0.5);
    assertThat(fires(new WheelOvalCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void ovalStaysQuiet() {
    scene.cylinders = 6;
    wave(1, 0.35);
    quiet(new WheelOvalCheck(), scene);
  }

  @Test
  void damagedToothFires() {
    wave(1, 0.2);
    scene.offsets[10] -= 0.9;
    Finding f = fires(new DamagedToothCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.title()).isEqualTo("Tooth 11 of the trigger wheel is bent or damaged.");
    assertThat(f.evidence().get(0)).contains("early in every turn");
  }

  @Test
  void damagedToothFiresWhenOneIsBrokenOff() {
    scene.lost = (t, k, r) -> k == 7;
    Finding f = fires(new DamagedToothCheck(), scene);
    assertThat(f.title()).isEqualTo("Tooth 7 of the trigger wheel is missing or short.");
  }

  @Test
  void damagedToothSaysWhereItWouldBeIfTheGapIsTheBrokenTooth() {
    scene.lost = (t, k, r) -> k == 7;
    Finding f = fires(new DamagedToothCheck(), scene);
    assertThat(f.against().get(0)).endsWith("tooth 29 after it is the missing one.");
  }

  @Test
  void damagedToothFiresOnAShortOneThoughNoPlacesWereLearned() {
    scene.strengths[8] = 0.45;
    scene.turnsLearned = 0;
    Finding f = fires(new DamagedToothCheck(), scene);
    assertThat(f.title()).isEqualTo("Tooth 9 of the trigger wheel is short or worn.");
    assertThat(f.evidence().get(0)).containsPattern("45\\h% of its neighbours");
  }

  /** Run-out weakens all teeth of one side. */
  @Test
  void damagedToothLeavesTheWeakSideOfARimAlone() {
    for (int k = 1; k <= 35; k++) {
      double a = Math.toRadians(scene.wheel.degreesAfterTooth1(k));
      scene.strengths[k - 1] = 1 - 0.6 * Math.pow(Math.sin(a / 2), 2);
    }
    quiet(new DamagedToothCheck(), scene);
  }

  @Test
  void damagedToothLeavesTeethBesideTheGapAndAnExtraOneAlone() {
    scene.strengths[0] = 0.45;
    quiet(new DamagedToothCheck(), scene);
    scene.wheel = WheelPattern.withExtraTooth(24);
    scene.offsets = new double[25];
    scene.strengths = Scene.ones(25);
    scene.strengths[24] = 0.2;
    scene.strengths[0] = 0.4;
    quiet(new DamagedToothCheck(), scene);
    scene.lost = (t, k, r) -> k == 1;
    quiet(new DamagedToothCheck(), scene);
  }

  @Test
  void damagedToothAllowsForTheGap() {
    scene.offsets[0] = 0.2;
    scene.offsets[34] = -0.2;
    quiet(new DamagedToothCheck(), scene);
  }

  @Test
  void unevenTeethFires() {
    for (int k = 0; k < 35; k++) {
      scene.offsets[k] = k % 2 == 0 ? 0.25 : -0.25;
    }
    fires(new UnevenTeethCheck(), scene);
  }

  @Test
  void unevenTeethStaysQuiet() {
    wave(1, 0.3);
    quiet(new UnevenTeethCheck(), scene);
  }

  @Test
  void patternMismatchFires() {
    scene.told = Optional.of(WheelPattern.of(60, 2));
    Finding f = fires(new WheelPatternMismatchCheck(), scene);
    assertThat(f.title()).isEqualTo("The wheel is a 36-1, but the controller is told 60-2.");
  }

  @Test
  void patternMismatchStaysQuiet() {
    scene.told = Optional.of(WheelPattern.of(36, 1));
    quiet(new WheelPatternMismatchCheck(), scene);
  }

  @Test
  void wheelUncertainFires() {
    scene.confidence = 0.6;
    Finding f = fires(new WheelUncertainCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void wheelUncertainStaysQuiet() {
    quiet(new WheelUncertainCheck(), scene);
  }

  @Test
  void withoutReferenceFires() {
    scene.wheel = WheelPattern.plain(35);
    scene.told = Optional.of(WheelPattern.plain(35));
    assertThat(fires(new NoReferenceCheck(), scene).severity()).isEqualTo(Severity.NOTE);
  }

  @Test
  void teethThatNobodyCountedAreAWatch() {
    scene.wheel = WheelPattern.plain(3);
    Finding found = fires(new NoReferenceCheck(), scene);
    assertThat(found.severity()).isEqualTo(Severity.WATCH);
    assertThat(found.title()).contains("cannot be seen").contains("3");
  }

  @Test
  void withoutReferenceStaysQuiet() {
    quiet(new NoReferenceCheck(), scene);
  }

  private void wave(int order, double degrees) {
    for (int k = 1; k <= 35; k++) {
      double a = Math.toRadians(order * scene.wheel.degreesAfterTooth1(k));
      scene.offsets[k - 1] += degrees * Math.sin(a);
    }
  }

  private void sweep() {
    scene.fromRpm = 1000;
    scene.toRpm = 3000;
  }
}
