package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import toothmark.receiver.SyncLoss;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * How the starter turns the engine, and how much each compression holds it up.
 *
 * <p>Kinetic energy goes as the square of speed; what the air in a cylinder holds at top dead
 * centre is taken from it and given back, see {@link CompressionFit}. Not a measure of pressure.
 * See {@code docs/methods/diagnosis.md}.
 *
 * @param meanRpm mean speed of the part looked at, rev/min
 * @param ripple from the least to the greatest speed in a compression, or in a turn where the
 *     number of cylinders is not known, over the mean speed; the mean of all
 * @param cycles whole engine cycles looked at
 * @param compressions one for each cylinder, in the order in which they follow each other; empty
 *     where they cannot be compared
 */
public record Cranking(
    double meanRpm, double ripple, int cycles, List<Cranking.Compression> compressions) {

  /**
   * One compression of the cycle.
   *
   * @param cylinders the one that it is, or the two of which it is one; empty where top dead centre
   *     or the firing order is not known
   * @param share energy that it takes over the mean of all
   */
  public record Compression(List<Integer> cylinders, Measured share) {}

  /** Copies the list. */
  public Cranking {
    compressions = List.copyOf(compressions);
  }

  /**
   * How much each compression takes, in the order in which they follow each other.
   *
   * @return such as {@code 1 or 4: 98 ± 3 %, 3 or 2: 102 ± 2 %}, with 95 % intervals, each without
   *     its cylinders where they are not known
   */
  public String shares() {
    return compressions.stream()
        .map(
            c ->
                (c.cylinders().isEmpty() ? "" : Words.either(c.cylinders()) + ": ")
                    + Say.interval(c.share().times(100), Say.THIN + "%"))
        .collect(Collectors.joining(", "));
  }

  private static final double CYCLE = 2 * CrankAngle.REVOLUTION;
  private static final int FEWEST_TURNS = 2;
  private static final int FEWEST_CYCLES = 2;
  private static final int FEWEST_SLOTS = 12;

  /** Standard uncertainty of a share for the air's shape and the wheel's errors: a judgement. */
  private static final double UNMODELLED = 0.01;

  /** A cylinder this far off the mean in its top dead centre is another one, in spacings. */
  private static final double OTHER = 0.25;

  /**
   * Looks at the cranking with which a capture begins, without its first turn and the last before
   * the engine fires.
   *
   * @param seen what the earlier stages found
   * @return empty where there are less than two turns of it
   */
  public static Optional<Cranking> of(Observations seen) {
    if (seen.crank().isEmpty()) {
      return Optional.empty();
    }
    Turns turns = new Turns(seen.crank().get());
    return Part.of(turns).map(p -> new Look(seen, turns, p).all());
  }

  /** Angles between which the starter alone turns the engine at a settled speed. */
  private record Part(double from, double to) {

    static Optional<Part> of(Turns turns) {
      if (turns.turned() < FEWEST_TURNS + 1) {
        return Optional.empty();
      }
      double from = turns.angle(0) + CrankAngle.REVOLUTION;
      double to = turns.angle(turns.teeth() - 1);
      for (int i = turns.toothNear(from); i < turns.teeth(); i++) {
        double seconds = turns.time(i) - turns.timeAt(turns.angle(i) - CrankAngle.REVOLUTION);
        if (60 / seconds >= SyncLoss.CRANKING_BELOW_RPM) {
          // fired within the turn that is fast; the turn before it is the last of the starter's
          to = turns.angle(i) - 2 * CrankAngle.REVOLUTION;
          break;
        }
      }
      Part longest = new Part(from, Math.max(from, to)).longestNamed(turns);
      boolean enough = longest.to - longest.from >= FEWEST_TURNS * CrankAngle.REVOLUTION;
      return enough ? Optional.of(longest) : Optional.empty();
    }

    /** The longest stretch of it in which every tooth is named. */
    private Part longestNamed(Turns turns) {
      Part best = new Part(from, from);
      double start = from;
      for (Interval gap : turns.crank().wheel().undecided()) {
        int before = Math.max(0, turns.toothBefore(gap.startInclusive()));
        int after = Math.min(turns.toothBefore(gap.endExclusive()) + 1, turns.teeth() - 1);
        best = best.orLonger(start, Math.min(to, turns.angle(before)));
        start = Math.max(start, turns.angle(after));
      }
      return best.orLonger(start, to);
    }

    private Part orLonger(double start, double end) {
      return end - start > to - from ? new Part(start, end) : this;
    }
  }

  /** What is seen in that part. */
  private static final class Look {

    private final Observations seen;
    private final Turns turns;
    private final Part part;
    private final int cylinders;
    private final double spacing;
    private final int cycles;

    Look(Observations seen, Turns turns, Part part) {
      this.seen = seen;
      this.turns = turns;
      this.part = part;
      cylinders = seen.stated().cylinders();
      spacing = cylinders < 2 ? CrankAngle.REVOLUTION : CYCLE / cylinders;
      // half a pitch on each side, over which speeds are taken
      cycles = (int) ((part.to() - part.from() - turns.pattern().pitchDegrees()) / CYCLE);
    }

    Cranking all() {
      double seconds = turns.timeAt(part.to()) - turns.timeAt(part.from());
      double mean = (part.to() - part.from()) / seconds / 6;
      boolean comparable =
          cylinders >= 2 && cycles >= FEWEST_CYCLES && turns.pattern().slots() >= FEWEST_SLOTS;
      return new Cranking(mean, ripple(mean), cycles, comparable ? compressions() : List.of());
    }

    private List<Compression> compressions() {
      double from = part.from() + turns.pattern().pitchDegrees() / 2;
      Optional<CompressionFit.Result> fit = CompressionFit.of(turns, from, cycles, cylinders);
      if (fit.isEmpty()) {
        return List.of();
      }
      double[][] held = fit.get().held();
      double mean = Arrays.stream(held).flatMapToDouble(Arrays::stream).average().orElseThrow();
      if (!(mean > 0)) {
        return List.of();
      }
      List<Compression> all = new ArrayList<>();
      double pooled = Arrays.stream(held).mapToDouble(Look::variance).average().orElseThrow();
      for (int s = 0; s < cylinders; s++) {
        double own = Math.sqrt(Math.max(pooled, variance(held[s])) / cycles) / mean;
        double u = Math.hypot(own, UNMODELLED);
        double share = Arrays.stream(held[s]).average().orElseThrow() / mean;
        List<Integer> names = named(seen, turns, from + fit.get().topDegrees() + s * spacing);
        all.add(new Compression(names, new Measured(share, u)));
      }
      return all;
    }

    private static double variance(double[] x) {
      return new Variance().evaluate(x);
    }

    private double ripple(double mean) {
      double sum = 0;
      int n = (int) ((part.to() - part.from()) / spacing);
      for (int k = 0; k < n; k++) {
        double from = part.from() + k * spacing;
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int i = turns.toothNear(from);
            i < turns.teeth() && turns.angle(i) <= from + spacing;
            i++) {
          double rpm = turns.rpmAt(turns.time(i));
          least = Math.min(least, rpm);
          most = Math.max(most, rpm);
        }
        sum += (most - least) / mean / n;
      }
      return sum;
    }
  }

  /**
   * The cylinders that may stand at top dead centre at an angle: one where a coil of its own tells
   * which of the two turns of a cycle it is.
   *
   * @return the one, or the two of which it is one; empty where top dead centre or the firing order
   *     is not known
   */
  static List<Integer> named(Observations seen, Turns turns, double angle) {
    List<Integer> order = seen.stated().firing().order();
    OptionalDouble tdc = seen.topDeadCentreDegrees();
    int cylinders = seen.stated().cylinders();
    if (order.size() != cylinders || tdc.isEmpty()) {
      return List.of();
    }
    double spacing = CYCLE / cylinders;
    double spaces = (angle - tdc.getAsDouble()) / spacing;
    int nearest = (int) Math.rint(spaces);
    if (Math.abs(spaces - nearest) > OTHER) {
      return List.of();
    }
    List<Integer> either = new ArrayList<>();
    int turn = cylinders % 2 == 0 ? cylinders / 2 : cylinders;
    for (int place = Math.floorMod(nearest, turn); place < cylinders; place += turn) {
      either.add(order.get(place));
    }
    List<Integer> fired =
        either.stream().filter(c -> fires(seen, turns, c, angle, spacing)).toList();
    return fired.size() == 1 ? fired : either;
  }

  /** Whether a coil of this cylinder alone, once in a cycle, fires by that angle of the cycle. */
  private static boolean fires(
      Observations seen, Turns turns, int cylinder, double angle, double spacing) {
    return seen.coils().stream()
        .filter(c -> c.coil().cylinders().equals(List.of(cylinder)))
        .filter(c -> c.firesEveryDegrees() > 1.5 * CrankAngle.REVOLUTION)
        .flatMap(c -> c.sparks().stream())
        .filter(s -> turns.covers(s.timeSeconds()))
        .mapToDouble(s -> Math.IEEEremainder(turns.angleAt(s.timeSeconds()) - angle, CYCLE))
        .anyMatch(away -> Math.abs(away) < spacing / 2);
  }
}
