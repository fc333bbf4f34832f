package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.Controller.Dwell;
import toothmark.simulator.Controller.Timing;

/** What can be wrong with the timing of the sparks, and with the coils. */
final class TimingFaults {
  private TimingFaults() {}

  private static double signed(double size, Randomness random) {
    return random.chance(0.5) ? size : -size;
  }

  static Scenario misaligned(Scenario scenario, Randomness random) {
    double error = signed(random.uniform(1.8, 8.0), random);
    double told = scenario.controller().nominalTooth1BtdcDegrees() - error;
    return scenario.withController(scenario.controller().withNominal(told));
  }

  static Scenario delay(Scenario scenario, Randomness random) {
    Timing timing = scenario.controller().timing().withDelaySeconds(random.uniform(60e-6, 250e-6));
    return scenario.withController(scenario.controller().withTiming(timing));
  }

  static Scenario scatter(Scenario scenario, Randomness random) {
    Timing old = scenario.controller().timing();
    double degrees = random.uniform(0.9, 2.5);
    Timing timing =
        new Timing(old.delaySeconds(), old.scatterSeconds(), degrees, old.predictDegrees());
    return scenario.withController(scenario.controller().withTiming(timing));
  }

  static Scenario prediction(Scenario scenario, Randomness random) {
    Timing old = scenario.controller().timing();
    double ahead = random.uniform(40.0, 75.0);
    Timing timing =
        new Timing(old.delaySeconds(), old.scatterSeconds(), old.scatterDegrees(), ahead);
    return scenario.withController(scenario.controller().withTiming(timing));
  }

  static Scenario swapped(Scenario scenario, Randomness random) {
    List<Integer> outputs = new ArrayList<>();
    for (int i = 0; i < scenario.coils().count(scenario.engine()); i++) {
      outputs.add(i);
    }
    if (outputs.size() < 2) {
      throw new IllegalArgumentException("one coil cannot be swapped");
    }
    outputs.set(0, 1);
    outputs.set(1, 0);
    return scenario.withCoils(scenario.coils().withOutputs(outputs));
  }

  static Scenario silentCoil(Scenario scenario, Randomness random) {
    int recorded = scenario.hookup().coils().size();
    int coil = scenario.hookup().coils().get(random.below(recorded));
    Hookup hookup = scenario.hookup();
    return scenario.withCoils(scenario.coils().withSilentCoil(coil)).withHookup(hookup);
  }

  static Scenario misses(Scenario scenario, Randomness random) {
    Hookup hookup = scenario.hookup();
    double share = random.uniform(0.08, 0.25);
    return scenario.withCoils(scenario.coils().withMissShare(share)).withHookup(hookup);
  }

  static Scenario doubleTrigger(Scenario scenario, Randomness random) {
    Hookup hookup = scenario.hookup();
    double share = random.uniform(0.05, 0.2);
    return scenario.withCoils(scenario.coils().withRepeatShare(share)).withHookup(hookup);
  }

  static Scenario shortDwell(Scenario scenario, Randomness random) {
    Dwell dwell = new Dwell(random.uniform(0.8e-3, 1.4e-3), 8e-6, 0.8);
    return scenario.withController(scenario.controller().withDwell(dwell));
  }

  static Scenario longDwell(Scenario scenario, Randomness random) {
    Dwell dwell = new Dwell(random.uniform(7.0e-3, 11.0e-3), 8e-6, 0.9);
    return scenario.withController(scenario.controller().withDwell(dwell));
  }

  private static Scenario intoLimiter(Scenario scenario, Limiter limiter) {
    double duration = scenario.recorder().durationSeconds();
    SpeedProfile speed =
        SpeedProfile.sweep(0.55 * limiter.rpm(), 1.06 * limiter.rpm(), 0.45 * duration);
    return scenario.withSpeed(speed).withController(scenario.controller().withLimiter(limiter));
  }

  static Scenario sparkCut(Scenario scenario, Randomness random) {
    return intoLimiter(scenario, Limiter.cuttingSparksAbove(random.uniform(4500.0, 6500.0)));
  }

  static Scenario retard(Scenario scenario, Randomness random) {
    double degrees = random.uniform(10.0, 25.0);
    return intoLimiter(scenario, Limiter.retardingAbove(random.uniform(4500.0, 6500.0), degrees));
  }
}
