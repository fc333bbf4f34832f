package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.timing.SensorLag;
import toothmark.timing.TdcEvidence;
import toothmark.timing.TdcSource;
import toothmark.timing.Timing;
import toothmark.timing.WheelSlip;
import toothmark.units.Interval;
import toothmark.units.Measured;

/** Where the wheel stands against top dead centre, and whether it stays there. */
class AlignmentChecksTest {

  private final Scene scene = Scene.healthy();

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
}
