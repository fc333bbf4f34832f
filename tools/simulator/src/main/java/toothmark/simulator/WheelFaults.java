package toothmark.simulator;

import java.util.List;
import toothmark.simulator.Wheel.BoltHead;
import toothmark.simulator.Wheel.DamagedTooth;

/** What can be wrong with the wheel. */
final class WheelFaults {
  private static final List<String> USUAL_PATTERNS =
      List.of("36-1", "60-2", "24-1", "36-2", "12-1");

  private WheelFaults() {}

  static Scenario runOut(Scenario scenario, Randomness random) {
    double pitch = scenario.wheel().errors().pitchRmsDegrees();
    double eccentricity = random.uniform(0.22, 0.5);
    Wheel.Errors errors = new Wheel.Errors(pitch, eccentricity, random.uniform(0.0, 360.0));
    return scenario.withWheel(scenario.wheel().withErrors(errors));
  }

  /** Not a tooth beside a gap, whose place is odd anyway. */
  static Scenario damagedTooth(Scenario scenario, Randomness random) {
    Pattern pattern = scenario.wheel().pattern();
    int tooth = Math.min(pattern.teeth(), 3 + random.below(Math.max(1, pattern.teeth() / 2 - 3)));
    double kind = random.uniform();
    double sign = random.chance(0.5) ? 1.0 : -1.0;
    double bent = sign * pattern.pitchDegrees() * random.uniform(0.14, 0.28);
    DamagedTooth damage =
        kind < 0.55
            ? new DamagedTooth(tooth, bent, random.uniform(0.0, 0.3))
            : kind < 0.8
                ? new DamagedTooth(tooth, 0.25 * bent, random.uniform(1.2, 2.5))
                : new DamagedTooth(tooth, 0.0, Double.POSITIVE_INFINITY);
    return scenario.withWheel(scenario.wheel().withDamage(damage));
  }

  static Scenario slip(Scenario scenario, Randomness random) {
    double duration = scenario.recorder().durationSeconds();
    double degrees = random.uniform(3.0, 12.0);
    WheelSlip slip =
        random.chance(0.6)
            ? new WheelSlip(duration * random.uniform(0.3, 0.7), 0.03, degrees)
            : new WheelSlip(0.1 * duration, 0.8 * duration, degrees);
    return scenario.withWheel(scenario.wheel().withSlip(slip));
  }

  static Scenario wrongPattern(Scenario scenario, Randomness random) {
    String right = scenario.wheel().pattern().name();
    List<String> others = USUAL_PATTERNS.stream().filter(p -> !p.equals(right)).toList();
    return scenario.withToldPattern(others.get(random.below(others.size())));
  }

  /** Half-way between two teeth in the first half of the wheel. */
  static Scenario boltHead(Scenario scenario, Randomness random) {
    Pattern pattern = scenario.wheel().pattern();
    int tooth = 1 + random.below(pattern.teeth() / 2);
    double degrees = (pattern.toothSlots().get(tooth) + 0.5) * pattern.pitchDegrees();
    BoltHead bolt = new BoltHead(degrees, random.uniform(0.2, 0.5));
    return scenario.withWheel(scenario.wheel().withBoltHead(bolt));
  }
}
