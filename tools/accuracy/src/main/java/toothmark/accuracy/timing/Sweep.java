package toothmark.accuracy.timing;

import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.InMemory;
import toothmark.simulator.SimulatedCapture;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.timing.Limiter;
import toothmark.timing.Timing;
import toothmark.units.Measured;

/**
 * What was made of the timing of one sweep.
 *
 * @param name of the case
 * @param alignment error of tooth 1's angle, degrees
 * @param offset error of the gap at standstill, degrees
 * @param delay error, µs
 * @param answer what was said of the shape
 * @param limiters that were recognised
 * @param words all of it
 */
record Sweep(
    CaseName name,
    Optional<Miss> alignment,
    Optional<Miss> offset,
    Optional<Miss> delay,
    Answer answer,
    Set<Limiter.Manner> limiters,
    String words) {

  /** Two-sided 95 % of a normal quantity: JCGM 100:2008, table G.1. */
  private static final double COVERAGE = 1.96;

  /** Change of the gap over the sweep below which "no change" is a right answer, degrees. */
  private static final double SMALL_CHANGE_DEGREES = 0.3;

  /** How far a value is from the truth, and the standard uncertainty stated with it. */
  record Miss(double error, double stated) {
    boolean covered() {
      return Math.abs(error) <= COVERAGE * stated;
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%+.4f (u %.4f)", error, stated);
    }
  }

  /** What was said of the gap's change with speed. */
  enum Answer {
    RIGHT,
    CANNOT_TELL,
    WRONG
  }

  static Sweep of(CaseName name, SimulatedCapture capture) {
    Timing timing = InMemory.examine(capture).observations().timing();
    double offset = capture.truth().alignment().errorDegrees();
    double delay = 1e6 * capture.scenario().controller().timing().delaySeconds();
    Optional<GapFit> fit = timing.gap();
    Optional<Miss> alignment =
        timing.alignment().flatMap(a -> a.errorDegrees()).map(m -> miss(m, 1, offset));
    Optional<Miss> late = fit.flatMap(GapFit::delaySeconds).map(m -> miss(m, 1e6, delay));
    Optional<Miss> constant =
        late.isPresent() ? fit.map(f -> miss(f.offsetDegrees(), 1, offset)) : Optional.empty();
    Set<Limiter.Manner> limiters = new HashSet<>();
    timing.limiters().forEach(l -> limiters.add(l.manner()));
    Answer answer = fit.map(f -> answer(f, SweepKind.of(name), delay)).orElse(Answer.CANNOT_TELL);
    String words =
        String.format(
            Locale.ROOT,
            "offset %s°, delay %s µs of %.1f, alignment %s°, %s%s, limiters %s",
            constant.map(Miss::toString).orElse("–"),
            late.map(Miss::toString).orElse("–"),
            delay,
            alignment.map(Miss::toString).orElse("–"),
            fit.map(Sweep::said).orElse("no fit"),
            answer == Answer.WRONG ? " (wrong)" : "",
            limiters);
    return new Sweep(name, alignment, constant, late, answer, limiters, words);
  }

  private static Miss miss(Measured m, double scale, double truth) {
    return new Miss(scale * m.value() - truth, scale * m.standardUncertainty());
  }

  private static String said(GapFit fit) {
    String shift = fit.foretoldDegrees().map(m -> ", foretold " + m).orElse("");
    return shape(fit) + shift;
  }

  private static String shape(GapFit fit) {
    return fit.verdict() == GapFit.Verdict.NAMED
        ? "named " + fit.shapes().get(0).shape()
        : fit.verdict().toString();
  }

  /**
   * What a foreseeing controller does while the speed changes must be seen, and nothing of the kind
   * elsewhere; besides, a delay is the only change with speed.
   */
  private static Answer answer(GapFit fit, SweepKind kind, double delayMicroseconds) {
    boolean foreseen = fit.foretoldDegrees().isPresent();
    if (foreseen != (kind == SweepKind.FORESEEING)) {
      return Answer.WRONG;
    }
    GapShape truth = delayMicroseconds > 0 ? GapShape.DELAY : GapShape.CONSTANT;
    return switch (fit.verdict()) {
      case CANNOT_TELL -> Answer.CANNOT_TELL;
      case NAMED -> truth == fit.shapes().get(0).shape() ? Answer.RIGHT : Answer.WRONG;
      case NO_CHANGE -> {
        double change = 6e-6 * delayMicroseconds * (fit.toRpm() - fit.fromRpm());
        yield change < SMALL_CHANGE_DEGREES ? Answer.RIGHT : Answer.WRONG;
      }
    };
  }
}
