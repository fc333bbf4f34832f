package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.findings.Assertions.cannotRun;
import static toothmark.findings.Assertions.fires;
import static toothmark.findings.Assertions.quiet;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.timing.Limiter;
import toothmark.timing.LogMatch;
import toothmark.units.Interval;
import toothmark.units.Measured;
import toothmark.wheel.WheelPattern;

class TimingChecksTest {

  private Optional<Measured> foretold = Optional.empty();
  private final Scene scene = Scene.healthy();

  /** 100 microseconds are 0.6 degrees for each 1000 rev/min: 6 n tau. */
  @Test
  void delayFires() {
    scene.gap = Optional.of(fit(100e-6, 3e-6, 0.2, GapShape.DELAY));
    Finding f = fires(new TimingDelayCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.FAULT);
    assertThat(f.evidence().get(0)).contains("0.60° for each 1000 rev/min");
  }

  @Test
  void delayIsWorthALookFrom20Microseconds() {
    scene.gap = Optional.of(fit(40e-6, 3e-6, 0.2, GapShape.DELAY));
    assertThat(fires(new TimingDelayCheck(), scene).severity()).isEqualTo(Severity.WATCH);
  }

  @Test
  void delayStaysQuiet() {
    scene.gap = Optional.of(fit(15e-6, 3e-6, 0.2, GapShape.CONSTANT));
    quiet(new TimingDelayCheck(), scene);
  }

  @Test
  void delayCannotBeSeenAtOneSpeed() {
    GapFit f = fit(0, 1e-6, 0.2, GapShape.CONSTANT);
    scene.gap =
        Optional.of(
            new GapFit(
                f.offsetDegrees(),
                Optional.empty(),
                0,
                900,
                950,
                100,
                0,
                Optional.empty(),
                0.2,
                GapFit.Verdict.CANNOT_TELL,
                List.of()));
    cannotRun(
        new TimingDelayCheck(),
        scene,
        "The speed varies by less than 30 %, so a delay cannot be told from a fixed angle.");
  }

  @Test
  void scatterFires() {
    scene.gap = Optional.of(fit(0, 3e-6, 1.2, GapShape.CONSTANT));
    scene.gapJitter = 1.2;
    assertThat(fires(new TimingScatterCheck(), scene).severity()).isEqualTo(Severity.FAULT);
  }

  /** No controller foretells the next compression to a degree. */
  @Test
  void scatterOnTheStarterIsNotJudged() {
    scene.fromRpm = 190;
    scene.toRpm = 210;
    scene.seconds = 6;
    scene.gapJitter = 3;
    assertThat(new TimingScatterCheck().examine(new Symptoms(scene.seen())).reason()).isNotEmpty();
  }

  /** Four slots a turn are two a firing of four cylinders. */
  @Test
  void aDelayOnAWheelTooCoarseForTheEngineIsNotProven() {
    scene.gap = Optional.of(fit(100e-6, 3e-6, 0.2, GapShape.DELAY));
    scene.wheel = WheelPattern.of(4, 1);
    scene.offsets = new double[3];
    scene.strengths = Scene.ones(3);
    Finding f = WheelDoubt.weigh(fires(new TimingDelayCheck(), scene), new Symptoms(scene.seen()));
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.against()).anyMatch(t -> t.contains("too few teeth"));
  }

  @Test
  void aCourseThatTheFitHasNotIsNoScatter() {
    scene.gap = Optional.of(fit(0, 3e-6, 1.2, GapShape.CONSTANT));
    scene.gapJitter = 0.1;
    quiet(new TimingScatterCheck(), scene);
  }

  @Test
  void scatterStaysQuiet() {
    scene.gap = Optional.of(fit(0, 3e-6, 0.3, GapShape.CONSTANT));
    quiet(new TimingScatterCheck(), scene);
  }

  @ParameterizedTest
  @EnumSource(
      value = GapShape.class,
      names = {"FILTER_LAG", "THRESHOLD", "STEP"})
  void eachShapeIsNamedByItsOwnCheckOnly(GapShape shape) {
    for (GapShape other : GapShape.values()) {
      Check check =
          switch (other) {
            case FILTER_LAG -> new FilterLagCheck();
            case THRESHOLD -> new ThresholdLagCheck();
            case STEP -> new TimingStepCheck();
            case CONSTANT, DELAY -> null;
          };
      Scene s = Scene.healthy();
      s.gap = Optional.of(fit(0, 3e-6, 0.2, shape));
      s.gapFrom = -1;
      s.gapTo = 1;
      if (check != null && other == shape) {
        assertThat(fires(check, s).severity()).isEqualTo(Severity.WATCH);
      } else if (check != null) {
        quiet(check, s);
      }
    }
  }

  @Test
  void aSparkForetoldFiresHoweverElseTheGapChanges() {
    foretold = Optional.of(new Measured(0.9, 0.05));
    scene.gap = Optional.of(fit(60e-6, 3e-6, 0.2, GapShape.DELAY));
    Finding f = fires(new SpeedPredictionCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.WATCH);
    assertThat(f.evidence().get(0)).contains("by up to 0.900").endsWith("0.098°.");
    fires(new TimingDelayCheck(), scene);
  }

  @Test
  void aSparkThatForetellingHardlyMovesStaysQuiet() {
    foretold = Optional.of(new Measured(0.3, 0.05));
    scene.gap = Optional.of(fit(0, 3e-6, 0.2, GapShape.CONSTANT));
    quiet(new SpeedPredictionCheck(), scene);
  }

  @Test
  void sparkCutFires() {
    scene.limiters.add(
        new Limiter(Limiter.Manner.SPARK_CUT, 6200, new Interval(1.0, 1.4), 31, 80, 0));
    Finding f = fires(new SparkCutLimiterCheck(), scene);
    assertThat(f.severity()).isEqualTo(Severity.NOTE);
    assertThat(f.evidence().get(0)).startsWith("31 of 80 sparks are left out");
  }

  @Test
  void sparkCutStaysQuiet() {
    quiet(new SparkCutLimiterCheck(), scene);
  }

  @Test
  void retardFires() {
    scene.limiters.add(
        new Limiter(Limiter.Manner.RETARD, 6000, new Interval(1.0, 1.4), 31, 31, 20));
    Finding f = fires(new TimingRetardLimiterCheck(), scene);
    assertThat(f.evidence().get(0)).contains("20.0° later than commanded");
  }

  @Test
  void retardStaysQuiet() {
    quiet(new TimingRetardLimiterCheck(), scene);
  }

  @Test
  void logRefusedFires() {
    scene.log = Optional.of(log(LogMatch.Outcome.REFUSED));
    assertThat(fires(new LogRefusedCheck(), scene).evidence())
        .containsExactly("The two speeds correlate by 0.21; 0.9 is needed.");
  }

  @Test
  void logRefusedStaysQuiet() {
    scene.log = Optional.of(log(LogMatch.Outcome.MATCHED));
    quiet(new LogRefusedCheck(), scene);
  }

  private static LogMatch log(LogMatch.Outcome outcome) {
    return new LogMatch(
        Optional.of(new Measured(1, 0.01)),
        0,
        0.21,
        300,
        List.of(),
        outcome,
        "The two speeds correlate by 0.21; 0.9 is needed.");
  }

  private GapFit fit(double delay, double u, double scatter, GapShape best) {
    return new GapFit(
        new Measured(0.1, 0.02),
        Optional.of(new Measured(delay, u)),
        -0.9,
        1000,
        5000,
        150,
        0,
        foretold,
        scatter,
        GapFit.Verdict.NAMED,
        List.of(new GapFit.ShapeScore(best, 0)));
  }
}
