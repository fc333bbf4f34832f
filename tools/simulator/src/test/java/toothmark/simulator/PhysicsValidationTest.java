package toothmark.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The simulated machine against facts published elsewhere. */
class PhysicsValidationTest {

  private static Wheel perfect(String pattern) {
    return Wheel.of(pattern, 90.0).withErrors(new Wheel.Errors(0.0, 0.0, 0.0));
  }

  private static double fundamental(String pattern, double gapMm) {
    Wheel wheel = perfect(pattern);
    ToothLayout layout = new ToothLayout(wheel, Randomness.of(1, "wheel"));
    FluxProfile flux = new FluxProfile(wheel, layout, gapMm);
    int slots = wheel.pattern().slots();
    double sine = 0.0;
    for (int i = 0; i < 36_000; i++) {
      double degrees = i * 0.01;
      sine += flux.at(degrees) * StrictMath.sin(StrictMath.toRadians(slots * degrees));
    }
    return Math.abs(sine);
  }

  /** Spacing loss of 54.6 dB a wavelength (Wallace, Bell System Technical Journal 30, 1951). */
  @ParameterizedTest
  @CsvSource({"36, 0.5", "36, 1.0", "60, 0.5", "24, 1.0"})
  void fundamentalFallsWithTheGapAsWallaceFound(String pattern, double extraMm) {
    double wavelengthMm = Math.PI * 150.0 / Integer.parseInt(pattern);

    double lossDb =
        20.0 * StrictMath.log10(fundamental(pattern, 0.8) / fundamental(pattern, 0.8 + extraMm));

    assertThat(lossDb).isCloseTo(54.6 * extraMm / wavelengthMm, within(0.05));
  }

  /**
   * Angle error of an eccentric disc, 412.5 arc seconds for each micrometre on each millimetre of
   * diameter: the table of rotary encoder makers' notes (100 mm: 10 um 41", 100 um 412").
   */
  @ParameterizedTest
  @CsvSource({"100, 0.010, 41", "100, 0.025, 103", "100, 0.100, 412", "50, 0.025, 206"})
  void eccentricityTurnsTeethAsEncoderMakersSay(double diameter, double ecc, double arcSeconds) {
    Wheel.Mount mount = new Wheel.Mount(Wheel.Shaft.CRANK, 90.0, diameter);
    Wheel wheel = perfect("360").withMount(mount).withErrors(new Wheel.Errors(0.0, ecc, 0.0));
    ToothLayout layout = new ToothLayout(wheel, Randomness.of(1, "wheel"));

    double worst = 0.0;
    for (int i = 0; i < layout.teeth(); i++) {
      worst = Math.max(worst, Math.abs(layout.degrees(i) - i));
    }

    assertThat(worst * 3600.0).isCloseTo(arcSeconds, within(0.6));
  }

  /**
   * Cranking V8 of 548 cubic inches and compression ratio 15: 85 rev/min on compression, 150 on
   * average, 225 after it (Tech Briefs, article 21269). The inertia is not published; 0.5 kg m2
   * with the starter engaged is fitted, so the mean and the shape are the test.
   */
  @Test
  void crankingRippleIsThatOfThePublishedEngine() {
    Engine engine = new Engine(List.of(1, 8, 4, 3, 6, 5, 7, 2), 9.0, 15.0, 0.25, 108.0);
    Scenario scenario =
        Scenario.healthy("v8", 1)
            .withEngine(engine)
            .withSpeed(SpeedProfile.cranking(155.0))
            .withRecorder(Recorder.oscilloscope(10e3, 3.0));

    Truth truth = Simulation.of(scenario).run().truth();

    ToothPassing first = truth.teeth().get(0);
    ToothPassing last = truth.teeth().get(truth.teeth().size() - 1);
    double turned = last.crankDegrees() - first.crankDegrees();
    double mean = turned / 6.0 / (last.seconds() - first.seconds());
    assertThat(mean).isCloseTo(150.0, within(10.0));
    assertThat(truth.speed().minRpm()).isCloseTo(85.0, within(20.0));
    assertThat(truth.speed().maxRpm()).isCloseTo(225.0, within(30.0));
    double swing = truth.speed().maxRpm() - truth.speed().minRpm();
    assertThat(swing / mean).isCloseTo(0.93, within(0.25));
  }

  /** Slider crank: Heywood, Internal Combustion Engine Fundamentals (1988), equation 2.5, R 3.5. */
  @ParameterizedTest
  @CsvSource({"30, 0.084936", "60, 0.304418", "90, 0.572949", "150, 0.950962"})
  void pistonTravelIsThatOfASliderCrank(double degrees, double share) {
    assertThat(TorqueModel.travel(degrees, 3.5)).isCloseTo(share, within(1e-6));
  }

  /** The gap lasts M + 1 pitches at constant speed: elementary geometry. */
  @ParameterizedTest
  @CsvSource({"36-1, 2", "60-2, 3", "24-1, 2", "12-1, 2", "36-2-2-2, 3"})
  void gapLastsOnePitchMoreThanItsMissingTeeth(String pattern, double pitches) {
    Scenario scenario =
        Scenario.healthy("gap", 2)
            .withWheel(perfect(pattern))
            .withSpeed(
                SpeedProfile.steady(3000.0).withUnevenness(new SpeedProfile.Unevenness(0.0, 0.0)));
    List<ToothPassing> teeth = Simulation.of(scenario).run().truth().teeth();
    int last = scenario.wheel().pattern().teeth();

    for (int i = 2 * last; i < 3 * last; i++) {
      double degrees = teeth.get(i).crankDegrees() - teeth.get(i - 1).crankDegrees();
      boolean gap = teeth.get(i).tooth() == 1;
      double expected = (gap ? pitches : degrees > 1.5 * 360.0 / slots(pattern) ? pitches : 1.0);
      assertThat(degrees).isCloseTo(expected * 360.0 / slots(pattern), within(1e-6));
    }
  }

  private static int slots(String pattern) {
    return Pattern.of(pattern).slots();
  }
}
