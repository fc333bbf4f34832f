package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.wheel.WheelPattern;

class CompressionUnevenCheckTest {

  private static final String CANNOT =
      "Compressions can be compared only over two engine cycles or more on the starter, of"
          + " cylinders that fire evenly, with 12 teeth or more.";

  private final CompressionUnevenCheck check = new CompressionUnevenCheck();
  private final Scene scene = Scene.healthy();

  @Test
  void firesOnOneWeakCylinderAndNamesItsPair() {
    cranks(1, 1, 0.7, 1);
    scene.firing =
        new Observations.Firing(
            List.of(1, 3, 4, 2), Observations.Statement.STATED, OptionalDouble.of(90));
    Finding f = fires(check, scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.evidence().get(0)).contains("1 or 4: ", ", 3 or 2: ");
    assertThat(f.evidence().get(1))
        .isEqualTo("It is cylinder 1 or 4; which of two, a wheel on the crank does not show.");
  }

  @Test
  void namesNoCylinderWhereTopDeadCentreIsUnknown() {
    cranks(1, 0.6, 1, 1);
    assertThat(fires(check, scene).evidence()).hasSize(1);
  }

  /**
   * The air's work goes with its mass, so shares of energy are shares of the model's compression.
   */
  @Test
  void readsHowMuchWeakerACylinderIs() {
    cranks(1, 1, 0.7, 1);
    double[] shares =
        Cranking.of(scene.seen()).orElseThrow().compressions().stream()
            .mapToDouble(c -> c.share().value())
            .sorted()
            .toArray();
    assertThat(shares[0] / shares[2]).isCloseTo(0.7, within(0.05));
  }

  @ParameterizedTest
  @ValueSource(strings = {"36-1", "60-2", "12-1", "24"})
  void firesOnAnyWheelAndStaysQuietOnASoundEngine(String wheel) {
    scene.wheel = WheelPattern.parse(wheel);
    scene.offsets = new double[scene.wheel.teeth()];
    scene.strengths = Scene.ones(scene.wheel.teeth());
    cranks(1, 1, 1, 1);
    quiet(check, scene);
    cranks(1, 1, 1, 0.65);
    fires(check, scene);
  }

  /** A wheel off centre reads alike in both turns of the cycle. */
  @Test
  void staysQuietOnAWheelOffCentre() {
    cranks(1, 1, 1, 1);
    scene.runOutDegrees = 1;
    quiet(check, scene);
  }

  @Test
  void staysQuietWhereACompressionIsLittleWeaker() {
    cranks(1, 1, 0.93, 1);
    quiet(check, scene);
  }

  @Test
  void staysQuietOnSixCylinders() {
    cranks(1, 1, 1, 1, 1, 1);
    quiet(check, scene);
    cranks(1, 1, 1, 1, 0.65, 1);
    fires(check, scene);
  }

  @Test
  void firesOnADeadCylinder() {
    cranks(1, 1, 1, 0);
    fires(check, scene);
  }

  /** Which of the two is weak, or whether the others are strong, is then not to be known. */
  @Test
  void staysQuietWhereTwoAreWeak() {
    cranks(0.6, 1, 0.6, 1);
    quiet(check, scene);
  }

  /** The first turn from rest and the last before the engine runs are left out. */
  @Test
  void cannotCompareAShortCranking() {
    cranks(1, 1, 0.6, 1);
    scene.seconds = scene.starter.timeOf(360 * 4.9);
    cannotRun(check, scene, CANNOT);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5})
  void comparesAnyNumberOfCylinders(int cylinders) {
    double[] compression = Scene.ones(cylinders);
    cranks(compression);
    quiet(check, scene);
    compression[1] = 0.7;
    cranks(compression);
    fires(check, scene);
  }

  @Test
  void namesTwoThatAreWeakInOneTurn() {
    cranks(0.6, 0.6, 1, 1);
    scene.firing =
        new Observations.Firing(
            List.of(1, 3, 4, 2), Observations.Statement.STATED, OptionalDouble.of(90));
    assertThat(fires(check, scene).evidence().get(1))
        .isEqualTo(
            "They are cylinders 1 or 4, and 3 or 2; which of two, a wheel on the crank does not"
                + " show.");
  }

  @Test
  void cannotCompareARunningEngine() {
    cannotRun(check, scene, CANNOT);
  }

  private void cranks(double... compression) {
    scene.cylinders = compression.length;
    scene.starter = new StarterModel(compression, 200, 90, 360 * 14);
    scene.seconds = scene.starter.timeOf(360 * 13);
  }
}
