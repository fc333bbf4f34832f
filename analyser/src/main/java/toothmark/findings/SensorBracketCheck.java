package toothmark.findings;

import java.util.Optional;
import toothmark.units.Measured;
import toothmark.units.Say;

/** The sensor swings on its bracket. */
final class SensorBracketCheck extends CrankCheck {

  /** Worth a look, degrees: it moves a spark that is timed from these teeth by as much. */
  private static final double WATCH_DEGREES = 0.1;

  /** To mend, degrees. */
  private static final double FAULT_DEGREES = 0.3;

  /** A crank that twists hardly changes the signal's strength: by less than this in a degree. */
  private static final double STEADY = 0.01;

  @Override
  public String id() {
    return "sensor-bracket";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (!crank.severalSpeeds()) {
      return Outcome.cannotRun("no-sweep");
    }
    return crank
        .resonance()
        .filter(r -> r.degrees() >= WATCH_DEGREES && !isTwist(r))
        .map(r -> Outcome.fires(draft(r)))
        .orElse(Outcome.quiet());
  }

  /** Whether the strength of the signal is seen to stay while the teeth swing. */
  static boolean isTwist(Resonance r) {
    return r.strengthPerDegree().isPresent() && moves(r).isEmpty();
  }

  private static Optional<Measured> moves(Resonance r) {
    return r.strengthPerDegree().filter(m -> m.value() - 3 * m.standardUncertainty() > STEADY);
  }

  private Draft draft(Resonance r) {
    Optional<Measured> strength = moves(r);
    boolean proven = strength.isPresent() && r.degrees() >= FAULT_DEGREES;
    Draft d =
        describe(r, Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH))
            .probability(strength.isEmpty() ? 0.5 : proven ? 0.9 : 0.75);
    strength.ifPresent(m -> d.saw("strength", Say.percent(m.value() * r.degrees())));
    if (strength.isEmpty()) {
      d.against("twist");
    }
    return d.ratherThan("cylinders").caution("touch", "by-hand").picture(Picture.ORDERS);
  }

  static Draft describe(Resonance r, Draft d) {
    return d.saw(
        "swing",
        Say.degrees(r.degrees()),
        Say.scaled(Math.rint(r.hertz()), "Hz"),
        Say.rpm(r.fromRpm()),
        Say.rpm(r.toRpm()));
  }
}
