package toothmark.findings;

import toothmark.edges.CrankEdges;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.units.Say;

/** Nothing, or nothing but noise, comes from the crank sensor. */
final class NoCrankSignalCheck implements Check {

  /**
   * Least peak-to-peak voltage of a sensor worth the name, V: twice the lowest arming level of the
   * reference receiver.
   */
  private static final double LEAST_VOLTS = 0.06;

  /**
   * Peak-to-peak of noise alone, in standard deviations: a million normal samples stay within 9.8.
   */
  private static final double NOISE_SPAN = 10;

  /** Fewer edges than this are no signal of a turning wheel. */
  private static final int FEWEST_EDGES = 6;

  @Override
  public String id() {
    return "no-crank-signal";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.crank().isPresent()) {
      return Outcome.quiet();
    }
    CrankEdges edges = symptoms.seen().edges();
    if (CaptureTooShortCheck.shortOfTurns(symptoms.seen())
        || CaptureTooSlowCheck.jumps(symptoms.seen())) {
      return Outcome.quiet();
    }
    SignalQuality q = edges.quality();
    double span = q.high() - q.low();
    boolean few = Math.max(edges.falling().size(), edges.rising().size()) < FEWEST_EDGES;
    boolean wave = edges.kind() == SensorKind.VARIABLE_RELUCTANCE;
    boolean faint = wave && !hasWave(symptoms.seen());
    Draft d =
        Draft.of(id(), Severity.FAULT)
            .title(few || faint ? "no-signal" : "no-wheel")
            .probability(few || faint ? 0.98 : 0.8);
    d.sawIf(wave, "span", Words.height(span, symptoms.seen()));
    d.saw(
        edges.falling().size(),
        "edges",
        Say.seconds(symptoms.seen().capture().span().seconds()),
        symptoms.seen().undecodable());
    return Outcome.fires(d.ratherThan("weak-sensor").caution("unplug").picture(Picture.WAVEFORM));
  }

  /** Whether the crank channel swings by more than noise and hum would. */
  static boolean hasWave(Observations seen) {
    SignalQuality q = seen.edges().quality();
    double span = q.high() - q.low();
    boolean crossed = seen.edges().falling().size() + seen.edges().rising().size() > 0;
    return crossed && span >= leastSpan(seen) && span >= NOISE_SPAN * q.noise();
  }

  private static double leastSpan(Observations seen) {
    return seen.scale() == Observations.Scale.VOLTS ? LEAST_VOLTS : 0;
  }
}
