package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * A trigger wheel: which of its evenly spaced slots hold a tooth.
 *
 * <p>Written {@code slots-missing}: {@code 36-1}, {@code 60-2}; one extra tooth {@code 12+1}
 * (numbered last, half a slot before tooth 1); no reference {@code 36}; several gaps in the order
 * in which they pass the sensor, {@code 36-2-2-2}. Tooth 1 is the first tooth of the longest
 * unbroken run, or the first after the gap. Positions are in degrees after tooth 1.
 *
 * <p>The name of a wheel with several gaps does not say how many teeth stand between them. Where it
 * was not measured the groups are the customary ones of {@code 36-2-2-2} (16, 1 and 13 teeth;
 * common practice, no source) or as even as can be.
 */
public final class WheelPattern {

  private static final Pattern NAME = Pattern.compile("(\\d{1,3})((?:-\\d{1,2})*|\\+1)");
  private static final int MAX_SLOTS = 360;

  private final int slots;
  private final double[] positions;
  private final String name;

  private WheelPattern(int slots, double[] positions, String name) {
    this.slots = slots;
    this.positions = positions;
    this.name = name;
  }

  /**
   * Reads a name.
   *
   * @param name as in the class comment
   * @return the wheel
   * @throws IllegalArgumentException if the name is not of that form or leaves fewer than two teeth
   */
  public static WheelPattern parse(String name) {
    Matcher m = NAME.matcher(name.strip());
    if (!m.matches()) {
      throw new IllegalArgumentException(
          "\""
              + name
              + "\" is not a wheel; write slots-missing, such as 36-1, 60-2, 12+1 or 36-2-2-2");
    }
    int slots = Integer.parseInt(m.group(1));
    String tail = m.group(2);
    if (tail.equals("+1")) {
      return withExtraTooth(slots);
    }
    int[] gaps =
        tail.isEmpty()
            ? new int[0]
            : Arrays.stream(tail.substring(1).split("-")).mapToInt(Integer::parseInt).toArray();
    if (gaps.length == 0) {
      return plain(slots);
    }
    return ofRuns(slots, customaryRuns(slots, gaps), gaps);
  }

  /**
   * A wheel with one gap.
   *
   * @param slots evenly spaced places, 3 to 360
   * @param missing teeth left out in a row, at least 1
   * @return the wheel
   */
  public static WheelPattern of(int slots, int missing) {
    return ofRuns(slots, new int[] {slots - missing}, new int[] {missing});
  }

  /**
   * A wheel without a reference.
   *
   * @param slots number of teeth, 3 to 360
   * @return the wheel
   */
  public static WheelPattern plain(int slots) {
    checkSlots(slots, slots);
    double[] p = new double[slots];
    for (int i = 0; i < slots; i++) {
      p[i] = i * 360.0 / slots;
    }
    return new WheelPattern(slots, p, Integer.toString(slots));
  }

  /**
   * A full wheel with one extra tooth in the middle of a slot.
   *
   * @param slots evenly spaced teeth beside the extra one, 3 to 360
   * @return the wheel; the extra tooth is the last, half a pitch before tooth 1
   */
  public static WheelPattern withExtraTooth(int slots) {
    checkSlots(slots, slots);
    double[] p = new double[slots + 1];
    for (int i = 0; i < slots; i++) {
      p[i] = i * 360.0 / slots;
    }
    p[slots] = 360.0 - 180.0 / slots;
    return new WheelPattern(slots, p, slots + "+1");
  }

  /**
   * A wheel from its runs of teeth and the gaps after each.
   *
   * @param slots evenly spaced places
   * @param runs teeth in each run, in passing order; any run may come first
   * @param gaps missing teeth after each run, each at least 1
   * @return the wheel, tooth 1 at the first tooth of the longest run
   * @throws IllegalArgumentException if runs and gaps do not fill the slots
   */
  public static WheelPattern ofRuns(int slots, int[] runs, int[] gaps) {
    if (runs.length != gaps.length
        || Arrays.stream(runs).sum() + Arrays.stream(gaps).sum() != slots) {
      throw new IllegalArgumentException(
          "runs "
              + Arrays.toString(runs)
              + " and gaps "
              + Arrays.toString(gaps)
              + " do not fill "
              + slots
              + " slots");
    }
    checkSlots(slots, Arrays.stream(runs).sum());
    int start = longest(runs);
    List<Double> p = new ArrayList<>();
    StringBuilder name = new StringBuilder().append(slots);
    int slot = 0;
    for (int i = 0; i < runs.length; i++) {
      int k = (start + i) % runs.length;
      if (runs[k] < 1 || gaps[k] < 1) {
        throw new IllegalArgumentException("each run and gap of a wheel needs at least one slot");
      }
      for (int j = 0; j < runs[k]; j++) {
        p.add((slot + j) * 360.0 / slots);
      }
      slot += runs[k] + gaps[k];
      name.append('-').append(gaps[k]);
    }
    return new WheelPattern(
        slots, p.stream().mapToDouble(Double::doubleValue).toArray(), name.toString());
  }

  private static int longest(int[] runs) {
    int best = 0;
    for (int i = 1; i < runs.length; i++) {
      if (runs[i] > runs[best]) {
        best = i;
      }
    }
    return best;
  }

  private static int[] customaryRuns(int slots, int[] gaps) {
    int teeth = slots - Arrays.stream(gaps).sum();
    if (slots == 36 && Arrays.equals(gaps, new int[] {2, 2, 2})) {
      return new int[] {16, 1, 13};
    }
    int[] runs = new int[gaps.length];
    for (int i = 0; i < runs.length; i++) {
      runs[i] = teeth / runs.length + (i < teeth % runs.length ? 1 : 0);
    }
    return runs;
  }

  private static void checkSlots(int slots, int teeth) {
    if (slots < 3 || slots > MAX_SLOTS || teeth < 2) {
      throw new IllegalArgumentException(
          "a wheel needs 3 to 360 slots and at least two teeth, got "
              + slots
              + " slots and "
              + teeth
              + " teeth");
    }
  }

  /**
   * Evenly spaced places around the wheel.
   *
   * @return 3 to 360
   */
  public int slots() {
    return slots;
  }

  /**
   * Teeth that are there.
   *
   * @return at least 2
   */
  public int teeth() {
    return positions.length;
  }

  /**
   * Where a tooth stands.
   *
   * @param tooth number from 1
   * @return degrees after tooth 1, in [0, 360)
   */
  public double degreesAfterTooth1(int tooth) {
    return positions[tooth - 1];
  }

  /**
   * Angle from a tooth to the next one.
   *
   * @param number of the tooth, from 1
   * @return degrees
   */
  public double degreesToNext(int number) {
    int next = number % teeth() + 1;
    double turns = next == 1 ? 360 : 0;
    return degreesAfterTooth1(next) + turns - degreesAfterTooth1(number);
  }

  /**
   * Angle to a tooth from the one before.
   *
   * @param number of the tooth, from 1
   * @return degrees
   */
  public double degreesFromLast(int number) {
    return degreesToNext((number + teeth() - 2) % teeth() + 1);
  }

  /**
   * Whether a neighbour stands so near, as an extra tooth does, that the slot between fills with
   * both their fields.
   *
   * @param number of the tooth, from 1
   * @return whether either space beside it is under three quarters of a pitch
   */
  public boolean isCrowded(int number) {
    return Math.min(degreesFromLast(number), degreesToNext(number)) < 0.75 * pitchDegrees();
  }

  /**
   * Angle from one slot to the next.
   *
   * @return degrees
   */
  public double pitchDegrees() {
    return 360.0 / slots;
  }

  /**
   * Empty slots after each unbroken run of teeth.
   *
   * @return in passing order from the run that starts with tooth 1; empty without a gap
   */
  public int[] gapLengths() {
    return breaks().map(k -> slotsTo(k + 1) - 1).toArray();
  }

  /**
   * Teeth in each unbroken run.
   *
   * @return in passing order from the run that starts with tooth 1, as many as gaps; empty without
   *     a gap
   */
  public int[] runLengths() {
    int[] last = breaks().toArray();
    int[] runs = last.clone();
    for (int i = 0; i < last.length; i++) {
      runs[i] = i == 0 ? last[i] + 1 : last[i] - last[i - 1];
    }
    return runs;
  }

  /** Teeth, from 0, after which slots stay empty. */
  private IntStream breaks() {
    return IntStream.range(0, positions.length).filter(k -> slotsTo(k + 1) > 1);
  }

  /** Slots from the tooth before to this one, both from 0. */
  private int slotsTo(int k) {
    double next = k < positions.length ? positions[k] : 360.0;
    return (int) Math.round((next - positions[k - 1]) / pitchDegrees());
  }

  /**
   * Whether one turn can be told from the next by the teeth alone.
   *
   * @return false for a plain wheel
   */
  public boolean hasReference() {
    return positions.length != slots;
  }

  /**
   * Whether both go by one name; the groups of teeth between several gaps may differ.
   *
   * @param other a wheel
   * @return true for the same name
   */
  public boolean isNamedLike(WheelPattern other) {
    return name.equals(other.name);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof WheelPattern w
        && name.equals(w.name)
        && Arrays.equals(positions, w.positions);
  }

  @Override
  public int hashCode() {
    return 31 * name.hashCode() + Arrays.hashCode(positions);
  }

  /**
   * The wheel's name.
   *
   * @return such as {@code 36-1}
   */
  @Override
  public String toString() {
    return name;
  }
}
