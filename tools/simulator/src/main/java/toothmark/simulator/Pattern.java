package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;

/**
 * The slots and gaps of a wheel. Tooth 1 is the first tooth of the longest unbroken run.
 *
 * @param name as written in the trade: {@code 36-1}, {@code 60-2}, {@code 12+1}, {@code 36}, {@code
 *     36-2-2-2}
 * @param slots how many places of even pitch a turn has
 * @param toothSlots place of each tooth in slots after tooth 1, in order; the extra tooth of a
 *     {@code N+1} wheel stands half-way
 */
public record Pattern(String name, int slots, List<Double> toothSlots) {

  /** Copies the list and checks that the teeth are in order and fit into a turn. */
  public Pattern {
    toothSlots = List.copyOf(toothSlots);
    double last = -1.0;
    for (double slot : toothSlots) {
      if (slot <= last || slot >= slots) {
        throw new IllegalArgumentException(name + ": tooth at slot " + slot + " of " + slots);
      }
      last = slot;
    }
  }

  /**
   * Reads the trade's notation. Several gaps are only given a place here for {@code 36-2-2-2}, with
   * runs of 16, 13 and 1 teeth; others need {@link #ofRuns}.
   *
   * @param name as written in the trade
   * @return the pattern
   */
  public static Pattern of(String name) {
    String[] parts = name.split("[-+]");
    int slots = Integer.parseInt(parts[0]);
    if (name.equals("36-2-2-2")) {
      return ofRuns(name, List.of(16, 13, 1), List.of(2, 2, 2));
    }
    if (parts.length > 2) {
      throw new IllegalArgumentException(name + ": where the gaps are is not known");
    }
    int missing = parts.length == 2 && name.contains("-") ? Integer.parseInt(parts[1]) : 0;
    List<Double> teeth = new ArrayList<>();
    for (int i = 0; i < slots - missing; i++) {
      teeth.add((double) i);
    }
    if (name.contains("+")) {
      teeth.add(slots - 0.5);
    }
    return new Pattern(name, slots, teeth);
  }

  /**
   * A wheel given by its runs of teeth and the gap after each, in the order in which they pass.
   *
   * @param name as written in the trade
   * @param runs teeth in each run; the first must be the longest
   * @param gaps missing teeth after each run
   * @return the pattern
   */
  public static Pattern ofRuns(String name, List<Integer> runs, List<Integer> gaps) {
    List<Double> teeth = new ArrayList<>();
    int slot = 0;
    for (int r = 0; r < runs.size(); r++) {
      if (runs.get(r) > runs.get(0)) {
        throw new IllegalArgumentException(name + ": the first run of teeth is not the longest");
      }
      for (int i = 0; i < runs.get(r); i++) {
        teeth.add((double) slot++);
      }
      slot += gaps.get(r);
    }
    return new Pattern(name, slot, teeth);
  }

  /**
   * How many teeth pass in a turn.
   *
   * @return at least 1
   */
  public int teeth() {
    return toothSlots.size();
  }

  /**
   * Degrees of the wheel from one slot to the next.
   *
   * @return degrees
   */
  public double pitchDegrees() {
    return 360.0 / slots;
  }
}
