package toothmark.wheel;

import java.util.Arrays;
import java.util.BitSet;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Which teeth of a wheel stand far out of place or are weak, and which never give an edge; and
 * where something besides its teeth does.
 */
final class ToothFaults {

  private static final double BENT_NATS = 6;

  /** Besides which tooth it is: about as rare as a wheel with a gap more that is not usual. */
  private static final double DEAD_NATS = 5.4;

  private static final int MOST_DEAD = 3;

  private final double[] offsets;
  private final double[] strengths;
  private final BitSet dead;
  private final OptionalDouble feature;

  private ToothFaults(double[] offsets, double[] strengths, BitSet dead, OptionalDouble feature) {
    this.offsets = offsets;
    this.strengths = strengths;
    this.dead = dead;
    this.feature = feature;
  }

  static ToothFaults none(int teeth) {
    double[] sound = new double[teeth];
    Arrays.fill(sound, 1);
    return new ToothFaults(new double[teeth], sound, new BitSet(), OptionalDouble.empty());
  }

  /** The same with these offsets, degrees by tooth from 0. */
  ToothFaults withOffsets(double[] degrees) {
    return new ToothFaults(degrees, strengths, dead, feature);
  }

  /** The same with edges so strong, 1 those of a sound tooth, by tooth from 0. */
  ToothFaults withStrengths(double[] shares) {
    return new ToothFaults(offsets, shares, dead, feature);
  }

  /** The same with these teeth dead, from 0. */
  ToothFaults withDead(BitSet teeth) {
    return new ToothFaults(offsets, strengths, teeth, feature);
  }

  /** The same with something that gives an edge between teeth, degrees after tooth 1. */
  ToothFaults withFeature(OptionalDouble degrees) {
    return new ToothFaults(offsets, strengths, dead, degrees);
  }

  /** Where something besides the teeth gives an edge, degrees after tooth 1. */
  OptionalDouble feature() {
    return feature;
  }

  /**
   * Teeth out of place by less than that, degrees: as the missing neighbour's field may make it
   * seem beside a gap.
   */
  int[] smallerThan(double degrees) {
    return IntStream.range(0, offsets.length)
        .filter(k -> offsets[k] != 0 && Math.abs(offsets[k]) < degrees)
        .toArray();
  }

  /** The same with these teeth in place. */
  ToothFaults inPlace(int... teeth) {
    double[] others = offsets.clone();
    for (int tooth : teeth) {
      others[tooth] = 0;
    }
    return withOffsets(others);
  }

  double offset(int tooth) {
    return offsets[tooth];
  }

  double strength(int tooth) {
    return strengths[tooth];
  }

  boolean isDead(int tooth) {
    return dead.get(tooth);
  }

  /**
   * What it costs to say so of them. A bolt head that gives an edge is as seldom as a dead tooth.
   *
   * @param pattern the wheel
   * @return nats
   */
  double price(WheelPattern pattern) {
    boolean many = dead() > MOST_DEAD || dead() * 8 > offsets.length;
    int odd = dead() + (feature.isPresent() ? 1 : 0);
    return many ? Double.POSITIVE_INFINITY : BENT_NATS * bent() + priceOfDead(pattern) * odd;
  }

  /** Whether a wheel gives so many edges each turn, some of its teeth dead or something besides. */
  static boolean mayGive(WheelPattern pattern, int edges) {
    return edges >= pattern.teeth() - MOST_DEAD && edges <= pattern.teeth() + 1;
  }

  /** What it costs to say of one tooth that it gives no edge, nats. */
  static double priceOfDead(WheelPattern pattern) {
    return DEAD_NATS + Math.log(pattern.teeth());
  }

  /** The first dead tooth, from 0; -1 when there is none. */
  int firstDead() {
    return dead.nextSetBit(0);
  }

  int dead() {
    return dead.cardinality();
  }

  /** How many are out of place or weak. */
  int bent() {
    int n = 0;
    for (int k = 0; k < offsets.length; k++) {
      n += offsets[k] == 0 && strengths[k] == 1 ? 0 : 1;
    }
    return n;
  }

  boolean any() {
    return bent() > 0 || countsOtherwise();
  }

  /** Whether a turn has other edges than the wheel has teeth. */
  boolean countsOtherwise() {
    return dead() > 0 || feature.isPresent();
  }
}
