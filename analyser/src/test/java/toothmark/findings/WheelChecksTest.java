package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.examine;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import toothmark.edges.SensorKind;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.timing.SensorLag;
import toothmark.timing.TdcEvidence;
import toothmark.timing.TdcSource;
import toothmark.timing.Timing;
import toothmark.timing.WheelSlip;
import toothmark.units.Interval;
import toothmark.units.Measured;
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
    assertThat(fires(new NoReferenceCheck(), scene).severity()).isEqualTo(Severity.NOTE);
  }

  @Test
  void withoutReferenceStaysQuiet() {
    quiet(new NoReferenceCheck(), scene);
  }

  @Test
  void slipFires() {
    scene.alignment =
        Optional.of(
            alignment(
                Optional.empty(),
                Optional.of(
                    new WheelSlip(
                        WheelSlip.Manner.STEP, new Interval(0.7, 0.8), new Measured(4, 0.1)))));
    Finding f = fires(new WheelSlipCheck(), scene);
    assertThat(f.evidence().get(0)).contains("at once, 0.700 to 0.800");
  }

  @Test
  void slipStaysQuiet() {
    scene.alignment = Optional.of(alignment(Optional.of(new Measured(0, 0.05)), Optional.empty()));
    quiet(new WheelSlipCheck(), scene);
  }

  /** Sign: measured less nominal; positive means that sparks come further advanced. */
  @Test
  void misalignedFiresWithTheWayToMove() {
    scene.alignment =
        Optional.of(alignment(Optional.of(new Measured(4.2, 0.05)), Optional.empty()));
    Finding f = fires(new WheelMisalignedCheck(), scene);
    assertThat(f.title()).contains("too far advanced");
    assertThat(f.nextTest())
        .contains(
            "5.50\u00a0±\u00a00.13\u202fmm with the rotation,"
                + " or change the controller's setting by 4.200\u00a0±\u00a00.098°. Controllers"
                + " differ in the sign");
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void misalignedIsWorthALookBetweenHalfAndOneDegree() {
    scene.alignment =
        Optional.of(alignment(Optional.of(new Measured(-0.8, 0.05)), Optional.empty()));
    Finding f = fires(new WheelMisalignedCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.title()).contains("too far retarded");
  }

  @Test
  void misalignedStaysQuiet() {
    scene.alignment =
        Optional.of(alignment(Optional.of(new Measured(0.4, 0.05)), Optional.empty()));
    quiet(new WheelMisalignedCheck(), scene);
  }

  @Test
  void misalignedByMarksThatDisagreeIsNotJudged() {
    scene.alignment = Optional.of(alignment(Optional.of(new Measured(164, 44)), Optional.empty()));
    cannotRun(
        new WheelMisalignedCheck(),
        scene,
        "The marks of top dead centre come at angles that disagree.");
  }

  @Test
  void misalignedByTwoMarksIsNotProven() {
    Alignment a = alignment(Optional.of(new Measured(20, 0.05)), Optional.empty());
    AlignmentPoint mark = new AlignmentPoint(0.1, 900, 90, Double.NaN, AlignmentPoint.Use.KEPT);
    scene.alignment = Optional.of(with(a.source(), a, List.of(mark, mark)));
    assertThat(fires(new WheelMisalignedCheck(), scene).severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void misalignedNamesItsSourceAndWhatOthersSay() {
    Alignment a = alignment(Optional.of(new Measured(4, 0.7)), Optional.empty());
    scene.alignment = Optional.of(with(TdcSource.TIMING_LIGHT, a, List.of()));
    Finding alone = fires(new WheelMisalignedCheck(), scene);
    assertThat(alone.severity()).isEqualTo(Severity.FAULT);
    assertThat(alone.evidence()).contains("Top dead centre is known from timing-light readings.");

    scene.alignment = Optional.of(with(TdcSource.PISTON_STOP, a, List.of()));
    scene.unused =
        List.of(new TdcEvidence(TdcSource.TIMING_LIGHT, Optional.of(new Measured(93, 0.7))));
    Finding agreed = fires(new WheelMisalignedCheck(), scene);
    assertThat(agreed.evidence())
        .contains("By timing-light readings it would be 93.0\u00a0±\u00a01.4°, which agrees.");
    assertThat(agreed.nextTest()).startsWith("Read the piston stop once more.");

    scene.unused =
        List.of(new TdcEvidence(TdcSource.TIMING_LIGHT, Optional.of(new Measured(90, 0.7))));
    assertThat(fires(new WheelMisalignedCheck(), scene).against())
        .hasSize(1)
        .allMatch(s -> s.contains("does not agree"));
  }

  @Test
  void readingsByHandShowNoSlip() {
    Alignment a = alignment(Optional.of(new Measured(0, 0.7)), Optional.empty());
    scene.alignment = Optional.of(with(TdcSource.PISTON_STOP, a, List.of()));
    cannotRun(new WheelSlipCheck(), scene, Words.of("any.no-tdc"));
  }

  @Test
  void tdcMarkFires() {
    scene.alignment = Optional.of(marks(AlignmentPoint.Use.REJECTED));
    fires(new TdcMarkCheck(), scene);
  }

  @Test
  void tdcMarkStaysQuiet() {
    scene.alignment = Optional.of(marks(AlignmentPoint.Use.KEPT));
    quiet(new TdcMarkCheck(), scene);
  }

  @Test
  void tdcUnknownFiresWhereSparksAreCountedFromTheToldAngle() {
    scene.reference = Timing.Reference.NOMINAL;
    Finding f = fires(new TdcUnknownCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.NOTE);
    assertThat(f.nextTest()).contains("piston stop", "timing light", "channel");
  }

  @Test
  void tdcUnknownStaysQuiet() {
    quiet(new TdcUnknownCheck(), scene);
    scene.reference = Timing.Reference.UNKNOWN;
    quiet(new TdcUnknownCheck(), scene);
    scene.reference = Timing.Reference.NOMINAL;
    scene.coilsRecorded = false;
    quiet(new TdcUnknownCheck(), scene);
  }

  /** Pulses of 3 ms, as the charge of a coil: 16 degrees at 900 rev/min, 54 at 3000. */
  @Test
  void aMarkThatKeepsItsLengthInTimeIsNoMark() {
    List<AlignmentPoint> points = new java.util.ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double rpm = 900 + 190 * i;
      points.add(new AlignmentPoint(i, rpm, 90, 3e-3 * 6 * rpm, AlignmentPoint.Use.KEPT));
    }
    WheelSlip slip = new WheelSlip(WheelSlip.Manner.STEP, new Interval(5, 6), new Measured(9, 1));
    Alignment a = alignment(Optional.of(new Measured(9, 0.1)), Optional.of(slip));
    scene.alignment = Optional.of(with(TdcSource.MARK_CHANNEL, a, points));
    assertThat(fires(new TdcMarkCheck(), scene).title())
        .isEqualTo("The mark of top dead centre behaves like a coil.");
    String reason = "What is called the mark of top dead centre behaves like a coil.";
    cannotRun(new WheelSlipCheck(), scene, reason);
    cannotRun(new WheelMisalignedCheck(), scene, reason);
  }

  private static Alignment marks(AlignmentPoint.Use second) {
    List<AlignmentPoint> points = new java.util.ArrayList<>();
    for (int i = 0; i < 12; i++) {
      points.add(
          new AlignmentPoint(
              i, 900, 90, Double.NaN, i % 2 == 0 ? AlignmentPoint.Use.KEPT : second));
    }
    Alignment a = alignment(Optional.of(new Measured(0, 0.1)), Optional.empty());
    return with(TdcSource.MARK_CHANNEL, a, points);
  }

  private static Alignment with(TdcSource source, Alignment a, List<AlignmentPoint> points) {
    return new Alignment(
        source,
        a.nominalDegrees(),
        a.tooth1BtdcDegrees(),
        a.errorDegrees(),
        a.sensorMoveMillimetres(),
        a.lag(),
        a.slip(),
        a.parts(),
        points);
  }

  private static Alignment alignment(Optional<Measured> error, Optional<WheelSlip> slip) {
    return new Alignment(
        TdcSource.MARK_CHANNEL,
        OptionalDouble.of(90),
        error.map(e -> new Measured(90 + e.value(), e.standardUncertainty())),
        error,
        error.map(e -> e.times(Math.PI * 150 / 360)),
        new SensorLag(new Measured(20e-6, 12e-6), SensorLag.KnownFrom.USUAL_FOR_SENSOR),
        slip,
        new Alignment.Parts(0.02, 0.02, 0.02),
        Collections.nCopies(
            3, new AlignmentPoint(0.1, 900, 90, Double.NaN, AlignmentPoint.Use.KEPT)));
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
