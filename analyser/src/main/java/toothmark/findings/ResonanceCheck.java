package toothmark.findings;

import java.util.Optional;
import toothmark.units.Measured;
import toothmark.units.Say;

/** A check of what makes the teeth swing at one frequency. */
abstract class ResonanceCheck extends CrankCheck {

  /** A crank that twists hardly changes the signal's strength: by less than this in a degree. */
  private static final double STEADY = 0.01;

  @Override
  final Outcome examine(Observations seen, CrankSymptoms crank) {
    if (!crank.severalSpeeds()) {
      return Outcome.cannotRun("no-sweep");
    }
    return crank
        .resonance()
        .filter(this::isIt)
        .map(r -> Outcome.fires(draft(r)))
        .orElse(Outcome.quiet());
  }

  /** Whether a resonance is of this cause, and matters. */
  abstract boolean isIt(Resonance r);

  abstract Draft draft(Resonance r);

  /** Whether the strength of the signal is seen to stay while the teeth swing. */
  static boolean isTwist(Resonance r) {
    return r.strengthPerDegree().isPresent() && moves(r).isEmpty();
  }

  /** By which share the strength moves with each degree, where it does. */
  static Optional<Measured> moves(Resonance r) {
    return r.strengthPerDegree().filter(m -> m.value() - 3 * m.standardUncertainty() > STEADY);
  }

  /** A finding that begins with how the teeth swing. */
  final Draft begin(Resonance r, Severity severity) {
    return Draft.of(id(), severity)
        .saw(
            "swing",
            Say.degrees(r.degrees()),
            Say.scaled(Math.rint(r.hertz()), "Hz"),
            Say.rpm(r.fromRpm()),
            Say.rpm(r.toRpm()));
  }
}
