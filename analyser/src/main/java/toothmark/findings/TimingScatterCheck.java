package toothmark.findings;

import java.util.Optional;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.timing.Alignment;
import toothmark.timing.GapFit;
import toothmark.timing.Timing;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.WheelPattern;

/**
 * Sparks stray about their commanded angle from one to the next.
 *
 * <p>Where a wheel slips or coils fire in each other's place there is no one gap to stray about,
 * and the changes from each spark of a coil to its next are taken instead.
 */
final class TimingScatterCheck implements Check {

  /** Worth a look, degrees: a steady controller holds a few tenths. */
  private static final double WATCH_DEGREES = 0.5;

  /** To mend, degrees: three sparks in a hundred are then off by the 2 degrees makers allow. */
  private static final double FAULT_DEGREES = 0.75;

  /**
   * Where sparks change from one to the next by less than this share of what they stray about the
   * fit, they follow some course that the fit has not, and are steady.
   */
  private static final double STEADY_SHARE = 0.5;

  private static final int FEWEST = 10;

  @Override
  public String id() {
    return "timing-scatter";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Timing timing = symptoms.seen().timing();
    Optional<GapFit> fit = timing.gap();
    boolean oneGap =
        fit.isPresent() && !TimingDelayCheck.onTheStarter(fit) && !slips(timing) && !turned(timing);
    double[] changes = SparkChanges.of(timing.sparks());
    int count = oneGap ? fit.get().fitted() : changes.length;
    if (count < FEWEST) {
      return Outcome.cannotRun(TimingDelayCheck.onTheStarter(fit) ? "starter-alone" : "no-gap");
    }
    double s = SparkChanges.scatter(changes);
    s = oneGap && s > STEADY_SHARE * fit.get().scatterDegrees() ? fit.get().scatterDegrees() : s;
    Measured scatter = new Measured(s, s / Math.sqrt(2.0 * count));
    double sure = beyondJitter(symptoms, s - Say.EXPAND * scatter.standardUncertainty());
    if (sure < WATCH_DEGREES) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(scatter, count, sure >= FAULT_DEGREES));
  }

  private static boolean slips(Timing timing) {
    return timing.alignment().flatMap(Alignment::slip).isPresent();
  }

  private static boolean turned(Timing timing) {
    return timing.coils().stream().anyMatch(c -> Math.abs(c.turnedDegrees()) > 1);
  }

  /** What is left when the controller's own edge jitters: it places a spark from two edges. */
  private static double beyondJitter(Symptoms symptoms, double sure) {
    Observations seen = symptoms.seen();
    if (seen.crank().isEmpty() || seen.edges().kind() != SensorKind.HALL) {
      return sure;
    }
    EdgeTrain timed = seen.edges().train(seen.stated().timedEdge());
    WheelPattern wheel = seen.crank().get().wheel().pattern();
    double jitter = wheel.pitchDegrees() * EdgeScatter.pitches(timed, wheel.teeth());
    return Math.sqrt(Math.max(0, sure * Math.abs(sure) - 2 * jitter * jitter));
  }

  private Draft draft(Measured scatter, int count, boolean proven) {
    return Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
        .probability(proven ? 0.95 : 0.75)
        .saw(count, "strays", Say.degrees(scatter))
        .ratherThan("wheel-errors")
        .caution("advance")
        .picture(Picture.ADVANCE);
  }
}
