package toothmark.findings;

import java.util.Optional;
import toothmark.units.Measured;
import toothmark.units.Say;

/** The sensor swings on its bracket. */
final class SensorBracketCheck extends ResonanceCheck {

  /** Worth a look, degrees: it moves a spark that is timed from these teeth by as much. */
  private static final double WATCH_DEGREES = 0.1;

  /** To mend, degrees. */
  private static final double FAULT_DEGREES = 0.3;

  @Override
  public String id() {
    return "sensor-bracket";
  }

  @Override
  boolean isIt(Resonance r) {
    return r.degrees() >= WATCH_DEGREES && !isTwist(r);
  }

  @Override
  Draft draft(Resonance r) {
    Optional<Measured> strength = moves(r);
    boolean proven = strength.isPresent() && r.degrees() >= FAULT_DEGREES;
    Draft d =
        begin(r, proven ? Severity.FAULT : Severity.WATCH)
            .probability(strength.isEmpty() ? 0.5 : proven ? 0.9 : 0.75);
    strength.ifPresent(m -> d.saw("strength", Say.percent(m.value() * r.degrees())));
    if (strength.isEmpty()) {
      d.against("twist");
    }
    return d.ratherThan("cylinders").caution("touch", "by-hand").picture(Picture.ORDERS);
  }
}
