package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.Fault.Group;
import toothmark.simulator.Fault.Setting;

/** Random scenarios. The same seed always gives the same one. */
public final class Scenarios {
  private static final double TWO_FAULTS = 0.2;

  private Scenarios() {}

  /**
   * An engine with nothing wrong.
   *
   * @param seed decides all
   * @return wheel, sensor, engine, speed and recorder at random
   */
  public static Scenario healthy(long seed) {
    return new Draw(seed).scenario("healthy-" + seed, Setting.ANY);
  }

  /**
   * An engine with this fault, in a capture that can show it.
   *
   * @param fault what is wrong
   * @param seed decides all the rest
   * @return the scenario
   */
  public static Scenario faulty(Fault fault, long seed) {
    return with(List.of(fault), seed);
  }

  /**
   * An engine with one of the faults that are drawn, now and then with two.
   *
   * @param seed decides all
   * @return the scenario
   */
  public static Scenario faulty(long seed) {
    Randomness random = Randomness.of(seed, "which faults");
    List<Fault> named = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      if (fault.drawn()) {
        named.add(fault);
      }
    }
    Fault first = named.get(random.below(named.size()));
    List<Fault> second = named.stream().filter(f -> goTogether(first, f)).toList();
    if (!second.isEmpty() && random.chance(TWO_FAULTS)) {
      return with(List.of(first, second.get(random.below(second.size()))), seed);
    }
    return with(List.of(first), seed);
  }

  /**
   * An engine with all of these faults.
   *
   * @param faults what is wrong
   * @param seed decides all the rest
   * @return the scenario, named after the faults and the seed
   */
  public static Scenario with(List<Fault> faults, long seed) {
    List<String> words = faults.stream().map(Fault::words).toList();
    Setting setting = Setting.ANY;
    for (Fault fault : faults) {
      setting = fault.setting() == Setting.ANY ? setting : fault.setting();
    }
    String name = String.join("-and-", words) + "-" + seed;
    Scenario scenario = new Draw(seed).forFaults(faults).scenario(name, setting);
    for (Fault fault : faults) {
      scenario = fault.applyTo(scenario, seed);
    }
    return scenario;
  }

  private static boolean goTogether(Fault a, Fault b) {
    boolean alone =
        List.of(a.group(), b.group()).stream()
            .anyMatch(g -> g == Group.ALONE || g == Group.RECORDER || g == Group.BESIDE);
    boolean settings =
        a.setting() == b.setting() || a.setting() == Setting.ANY || b.setting() == Setting.ANY;
    return a.group() != b.group() && !alone && settings;
  }
}
