package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import toothmark.edges.SensorKind;

/**
 * How probable each possible cause makes a run of lost teeth: which tooth it starts at, out of all
 * that passed, how many teeth are lost in a row, and whether the signal itself was gone.
 *
 * <p>Prices as in {@link StraySources}.
 */
final class LossSources {

  /** Longest loss through an opening wire that the model knows, in turns. */
  private static final int LONGEST_TURNS = 8;

  private static final int FEWEST = 3;

  /** In a list of edges, noise and what an input stage makes of it explain lost teeth as well. */
  private static final int MANY_STRAYS = 5;

  private static final double LISTED_ODDS_AGAINST = 10_000;

  /** Sum of 1/k for k to n, less ln n (Euler and Mascheroni's constant). */
  private static final double EULER = 0.5772;

  private final Turns turns;
  private final List<LostTeeth> events;
  private final int strays;
  private final SensorKind kind;
  private final double anywhere;

  LossSources(Turns turns, List<LostTeeth> events, int strays, SensorKind kind) {
    this.kind = kind;
    this.turns = turns;
    this.events = events;
    this.strays = strays;
    this.anywhere = 1.0 / Math.max(1, turns.teeth());
  }

  List<Mixture.Source> all() {
    List<Mixture.Source> sources = new ArrayList<>();
    sources.add(new Mixture.Source(Losses.RANDOM, 0, e -> anywhere * atRandom(e)));
    double against = listed() && strays >= MANY_STRAYS ? LISTED_ODDS_AGAINST : 10;
    sources.add(new Mixture.Source(Losses.OPEN, Math.log(against), e -> open(e) * gone(e, 0.995)));
    sources.add(new Mixture.Source(Losses.DROPOUT, Math.log(20), e -> open(e) * gone(e, 0.02)));
    if (strays > 0) {
      sources.add(new Mixture.Source(Losses.HIDDEN, Math.log(2), this::hidden));
    }
    if (events.size() >= FEWEST) {
      sources.add(atTooth());
      addBySpeed(sources);
    }
    return sources;
  }

  /** Probability of a run of this length when each further tooth is lost with the rest of one. */
  private double geometric(int e, double stop) {
    return stop * Math.pow(1 - stop, events.get(e).count() - 1.0);
  }

  /**
   * How probable it is that the signal was gone, or still there but not taken; a list can't say.
   */
  private double gone(int e, double whenAbsent) {
    LostTeeth l = events.get(e);
    if (listed()) {
      return 0.5;
    }
    return 2 * l.absent() > l.count() ? whenAbsent : 1 - whenAbsent;
  }

  private boolean wave() {
    return kind == SensorKind.VARIABLE_RELUCTANCE;
  }

  private boolean listed() {
    return kind == SensorKind.EDGES_ONLY;
  }

  /**
   * A disturbance that is not seen itself hides a tooth; behind an input stage that made a list of
   * edges it may hide many. In a wave one that hides the tooth from sight would be seen.
   */
  private double atRandom(int e) {
    boolean many = listed() && strays >= MANY_STRAYS;
    double length = geometric(e, 0.85);
    return many ? 0.5 * length + 0.5 * anyLength(e) : length * gone(e, wave() ? 0.1 : 0.5);
  }

  /** At any instant and for any time: each doubling of the length as likely. */
  private double open(int e) {
    return anywhere * anyLength(e);
  }

  private double anyLength(int e) {
    int longest = LONGEST_TURNS * turns.pattern().teeth();
    double harmonic = Math.log(longest) + EULER;
    return 1 / harmonic / events.get(e).count();
  }

  /**
   * A disturbance hides the next tooth or two from sight, or raises the arming level of the input
   * stage so far that teeth are missed, though they are there, until it has come down again. A list
   * of edges was made by such an input stage.
   */
  private double hidden(int e) {
    if (events.get(e).stray().isEmpty()) {
      return 0;
    }
    boolean absent = 2 * events.get(e).absent() > events.get(e).count();
    double length =
        absent && !listed() ? geometric(e, 0.7) : 0.5 * geometric(e, 0.7) + 0.5 * anyLength(e);
    return length * gone(e, 0.2) / strays;
  }

  /** The same tooth turn after turn. */
  private Mixture.Source atTooth() {
    int[] count = new int[turns.pattern().teeth() + 1];
    events.forEach(l -> count[l.number()]++);
    int worst = 1;
    for (int k = 2; k < count.length; k++) {
      worst = count[k] > count[worst] ? k : worst;
    }
    int tooth = worst;
    double once = 1.0 / Math.max(1, turns.turned());
    double price = Math.log(10) + Math.log(turns.pattern().teeth());
    return new Mixture.Source(
        Losses.TOOTH,
        price,
        e -> events.get(e).number() == tooth ? once * geometric(e, 0.8) * 0.5 : 0);
  }

  /** Losses below a speed, and above one: the speeds that the losses themselves suggest. */
  private void addBySpeed(List<Mixture.Source> sources) {
    double[] rpm = new double[turns.teeth()];
    for (int i = 0; i < rpm.length; i++) {
      rpm[i] = turns.rpmAt(turns.time(i));
    }
    Arrays.sort(rpm);
    double[] lost = events.stream().mapToDouble(LostTeeth::rpm).sorted().toArray();
    Slowness slow = Slowness.of(lost);
    double fast = lost[(int) Math.ceil(0.1 * (lost.length - 1))];
    double below = Math.max(1, Arrays.stream(rpm).map(slow::share).sum());
    int above = Math.max(1, rpm.length - upTo(rpm, fast));
    double price = Math.log(10) + 0.5 * Math.log(rpm.length);
    sources.add(
        new Mixture.Source(
            Losses.SLOW,
            price,
            e -> slow.share(events.get(e).rpm()) / below * weak(e) * gone(e, 0.3)));
    sources.add(
        new Mixture.Source(
            Losses.FAST,
            price,
            e -> events.get(e).rpm() >= fast ? geometric(e, 0.6) * gone(e, 0.5) / above : 0));
  }

  /**
   * How the chance that a signal in proportion to speed is too weak falls with speed: by half at a
   * speed, and to little not far above.
   */
  private record Slowness(double rpm, double width) {

    private static final double LEAST_WIDTH = 0.02;

    static Slowness of(double[] sorted) {
      double half = quantile(sorted, 0.75);
      double width = (quantile(sorted, 0.9) - quantile(sorted, 0.5)) / 2;
      return new Slowness(half, Math.max(width, LEAST_WIDTH * half));
    }

    private static double quantile(double[] sorted, double share) {
      return sorted[(int) Math.floor(share * (sorted.length - 1))];
    }

    double share(double at) {
      return 1 / (1 + Math.exp((at - rpm) / width));
    }
  }

  /** A tooth or two where it is just too weak, or as long as a compression holds the crank up. */
  private double weak(int e) {
    return 0.5 * geometric(e, 0.5) + 0.5 * anyLength(e);
  }

  private static int upTo(double[] sorted, double value) {
    int i = Arrays.binarySearch(sorted, value);
    return i >= 0 ? i + 1 : -i - 1;
  }
}
