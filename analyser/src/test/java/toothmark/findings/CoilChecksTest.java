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
import toothmark.ignition.ChargeCurrent;
import toothmark.ignition.ChargeForm;
import toothmark.ignition.MeanTime;
import toothmark.timing.CoilTiming;
import toothmark.timing.FiringSequence;
import toothmark.timing.Limiter;
import toothmark.units.Interval;

class CoilChecksTest {

  private final Scene scene = Scene.healthy();

  @Test
  void swappedFires() {
    timings(180);
    Finding f = fires(new CoilsSwappedCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence()).hasSize(2);
  }

  @Test
  void sparksOutOfOrderNowAndThenAreWorthALook() {
    timings(0);
    sequence(5, 4, 60);
    Finding f = fires(new CoilsSwappedCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.evidence())
        .containsExactly(
            "5 sparks of 120 came out of the firing order, in 4 of 60 cycles.",
            "First, \u201ccoil 2\u201d fired in place of \u201ccoil 1\u201d at 0.500\u202fs.");
    assertThat(f.where()).hasSize(5);

    sequence(60, 60, 60);
    assertThat(fires(new CoilsSwappedCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void aStraySparkOrAnOrderOnlyAssumedSwapsNoCoils() {
    timings(0);
    sequence(2, 2, 60);
    quiet(new CoilsSwappedCheck(), scene);
    sequence(60, 60, 60);
    scene.firing = Observations.Firing.NOTHING;
    quiet(new CoilsSwappedCheck(), scene);
  }

  private void sequence(int sparks, int cyclesOut, int cycles) {
    scene.firing =
        new Observations.Firing(
            List.of(1, 3, 4, 2), Observations.Statement.STATED, OptionalDouble.empty());
    scene.sequence =
        Optional.of(
            new FiringSequence(
                List.of(1, 3, 4, 2),
                120,
                cycles,
                cyclesOut,
                Collections.nCopies(
                    sparks, new FiringSequence.OutOfOrder(0.5, 1, 180, Optional.of(0)))));
  }

  /** Six cylinders fire in more than one customary order. */
  @Test
  void whereTheOrderIsOnlyAssumedItIsWorthALookAtMost() {
    timings(180);
    scene.cylinders = 6;
    Finding f = fires(new CoilsSwappedCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.against().get(0))
        .isEqualTo("The job sheet states no firing order: this engine may have another.");
  }

  @Test
  void swappedStaysQuiet() {
    timings(0);
    quiet(new CoilsSwappedCheck(), scene);
  }

  private void timings(double turned) {
    scene.coilTimings.add(new CoilTiming(0, "coil 1", 23, 10, OptionalDouble.of(0), turned));
    scene.coilTimings.add(new CoilTiming(1, "coil 2", 23, 10, OptionalDouble.of(0), turned));
  }

  @Test
  void silentFires() {
    scene.silentCoil = 1;
    assertThat(fires(new CoilSilentCheck(), scene).title())
        .isEqualTo("\u201ccoil 2\u201d does not fire.");
  }

  @Test
  void silentStaysQuiet() {
    quiet(new CoilSilentCheck(), scene);
  }

  @Test
  void coilsMustBeRecorded() {
    scene.coilsRecorded = false;
    cannotRun(new CoilSilentCheck(), scene, "No coil was recorded.");
  }

  @Test
  void missesFires() {
    scene.everyNthSparkAbsent = 6;
    assertThat(fires(new CoilMissesCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void missesStaysQuietWhereALimiterCuts() {
    scene.everyNthSparkAbsent = 6;
    scene.limiters.add(new Limiter(Limiter.Manner.SPARK_CUT, 880, new Interval(0, 1.6), 6, 46, 0));
    quiet(new CoilMissesCheck(), scene);
  }

  @Test
  void doubleSparksFires() {
    scene.everyNthSparkTwice = 6;
    assertThat(fires(new DoubleSparksCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void doubleSparksStaysQuiet() {
    quiet(new DoubleSparksCheck(), scene);
  }

  @Test
  void dwellShortFires() {
    scene.dwellSeconds = 1.1e-3;
    assertThat(fires(new DwellShortCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  /** 2.2 ms is what a 3.5 mH, 0.6 ohm coil needs for 7 A at 13.5 V: t = -(L/R) ln(1 - I R/V). */
  @Test
  void dwellShortStaysQuiet() {
    scene.dwellSeconds = -3.5e-3 / 0.6 * Math.log(1 - 7 * 0.6 / 13.5);
    quiet(new DwellShortCheck(), scene);
  }

  @Test
  void dwellLongFires() {
    scene.dwellSeconds = 8e-3;
    assertThat(fires(new DwellLongCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  @Test
  void dwellLongStaysQuiet() {
    quiet(new DwellLongCheck(), scene);
  }

  @Test
  void dwellUnsteadyFires() {
    scene.dwellSpread = 0.35;
    fires(new DwellUnsteadyCheck(), scene);
  }

  @Test
  void dwellUnsteadyStaysQuiet() {
    scene.dwellSpread = 0.05;
    quiet(new DwellUnsteadyCheck(), scene);
  }

  /** What a current clamp shows of a long charge is said with it. */
  @Test
  void aLongChargeIsToldApartByItsCurrent() {
    scene.dwellSeconds = 8e-3;
    charge(ChargeForm.KNEE);
    Finding saturated = fires(new DwellLongCheck(), scene);
    assertThat(saturated.evidence()).contains("The current turns up late: a core saturates.");
    charge(ChargeForm.LIMITED);
    Finding limited = fires(new DwellLongCheck(), scene);
    assertThat(limited.evidence()).hasSize(1);
    assertThat(limited.against())
        .containsExactly(
            "The driver limits the current, which makes a long dwell harmless to the coil.");
  }

  private void charge(ChargeForm form) {
    scene.charge = Optional.of(new ChargeCurrent(form, new MeanTime(2.6e-3, 1e-5, 20), 0.33, 20));
  }
}
