package toothmark.wheel;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Where the teeth of an assumed wheel stand, ready for counting through many turns. */
final class WheelTemplate {

  private static final double TURN = 360.0;

  /** So weak the edges of teeth beside an extra one may be. */
  private static final double CROWDED = 0.1;

  private final double[] degrees;
  private final double[] strengths;
  private final int[] numbers;
  private final boolean reference;

  private WheelTemplate(double[] degrees, double[] strengths, int[] numbers, boolean reference) {
    this.degrees = degrees;
    this.strengths = strengths;
    this.numbers = numbers;
    this.reference = reference;
  }

  static WheelTemplate of(WheelPattern pattern) {
    return of(pattern, ToothFaults.none(pattern.teeth()));
  }

  /**
   * The same wheel with teeth out of place, without those that never give an edge, and with what
   * gives one besides them.
   */
  static WheelTemplate of(WheelPattern pattern, ToothFaults faults) {
    int[] live = IntStream.range(0, pattern.teeth()).filter(k -> !faults.isDead(k)).toArray();
    double[] d = new double[live.length];
    for (int k = 0; k < d.length; k++) {
      d[k] = pattern.degreesAfterTooth1(live[k] + 1) + faults.offset(live[k]);
    }
    double[] s = IntStream.of(live).mapToDouble(k -> strength(pattern, faults, k)).toArray();
    WheelTemplate teeth = new WheelTemplate(d, s, live, pattern.hasReference());
    boolean otherwise = faults.countsOtherwise();
    return otherwise ? teeth.withFeature(faults.feature()) : teeth;
  }

  private WheelTemplate withFeature(OptionalDouble feature) {
    if (feature.isEmpty()) {
      return new WheelTemplate(degrees, strengths, numbers, true);
    }
    int n = degrees.length;
    int place = (int) Arrays.stream(degrees).filter(d -> d < feature.getAsDouble()).count();
    double[] d = Arrays.copyOf(degrees, n + 1);
    double[] s = Arrays.copyOf(strengths, n + 1);
    int[] all = Arrays.copyOf(numbers, n + 1);
    System.arraycopy(degrees, place, d, place + 1, n - place);
    System.arraycopy(strengths, place, s, place + 1, n - place);
    System.arraycopy(numbers, place, all, place + 1, n - place);
    d[place] = feature.getAsDouble();
    all[place] = Labelling.STRAY;
    for (int k = place - 1; k <= place + 1; k++) {
      // found between two teeth that are neighbours, so it crowds both
      int crowded = Math.floorMod(k, n + 1);
      s[crowded] = Math.min(CROWDED, s[crowded]);
    }
    return new WheelTemplate(d, s, all, true);
  }

  private static double strength(WheelPattern pattern, ToothFaults faults, int tooth) {
    return pattern.isCrowded(tooth + 1)
        ? Math.min(CROWDED, faults.strength(tooth))
        : faults.strength(tooth);
  }

  /** A train of even steps, each a turn of its own: for counting slots before a wheel is known. */
  static WheelTemplate evenSteps() {
    return new WheelTemplate(new double[] {0}, new double[] {1}, new int[] {0}, false);
  }

  int teeth() {
    return degrees.length;
  }

  /** How strong a tooth's edge usually is, of a sound one's. */
  double strength(int tooth) {
    return strengths[tooth];
  }

  /** Number of a tooth on the whole wheel, from 0; {@link Labelling#STRAY} of what is none. */
  int number(int tooth) {
    return numbers[tooth];
  }

  /** How many teeth the first edge may be; a wheel without a reference has no preferred one. */
  int starts() {
    return reference ? degrees.length : 1;
  }

  /**
   * How far a later tooth stands.
   *
   * @param tooth from 0
   * @param steps teeth further on, at least 0
   * @return degrees
   */
  double ahead(int tooth, int steps) {
    int k = tooth + steps;
    if (k < degrees.length) {
      return degrees[k] - degrees[tooth];
    }
    int turns = k / degrees.length;
    return TURN * turns + degrees[k - turns * degrees.length] - degrees[tooth];
  }

  /**
   * In which of so many equal parts of a turn the crank is.
   *
   * @param tooth from 0
   * @param beyond degrees since it passed
   * @param parts of a turn, counted from half a part before the first tooth
   * @return from 0 to parts - 1
   */
  int phase(int tooth, double beyond, int parts) {
    double turns = (degrees[tooth] + beyond) / TURN + 0.5 / parts;
    return Math.min(parts - 1, (int) ((turns - Math.floor(turns)) * parts));
  }

  /**
   * The first tooth that stands at least so far ahead.
   *
   * @param tooth from 0
   * @param angle degrees ahead
   * @return steps, at least 1
   */
  int firstStepBeyond(int tooth, double angle) {
    int steps = 1;
    if (angle > TURN) {
      steps = Math.max(1, (int) (Math.floor(angle / TURN) - 1) * degrees.length);
    }
    while (ahead(tooth, steps) < angle) {
      steps++;
    }
    return steps;
  }

  /** The tooth so many steps further on, from 0. */
  int after(int tooth, int steps) {
    int k = tooth + steps;
    return k < degrees.length ? k : k % degrees.length;
  }
}
