package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import toothmark.receiver.SyncLoss;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * How the starter turns the engine, and how much each compression holds it up.
 *
 * <p>Kinetic energy goes as the square of speed. What a compression takes of it is read as the mean
 * of the energy at the peaks before and after it, less that at its middle; that drop is free of the
 * level of speed and of its steady rise. Which of the two turns of a cycle is which a crank wheel
 * does not show: the cycle begins with an arbitrary one. Not a measure of pressure. See {@code
 * docs/methods/diagnosis.md}.
 *
 * @param meanRpm mean speed of the part looked at, rev/min
 * @param ripple from the least to the greatest speed in a compression, over the mean speed; the
 *     mean of all compressions
 * @param cycles engine cycles looked at, 4 or more
 * @param compressions one for each cylinder, in the order in which they follow each other
 */
public record Cranking(
    double meanRpm, double ripple, int cycles, List<Cranking.Compression> compressions) {

  /**
   * One compression of the cycle.
   *
   * @param cylinders the two of which one it is; empty where top dead centre or the firing order is
   *     not known
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

  private static final int FEWEST_CYCLES = 4;
  private static final int FEWEST_CYLINDERS = 4;
  private static final int FEWEST_SLOTS = 12;

  /** Phases of a compression that are tried for its middle and its peak. */
  private static final int PHASES = 24;

  /** Furthest that one compression's middle may lie from the others': an eighth of the spacing. */
  private static final int FURTHEST = PHASES / 8;

  /**
   * Looks at the cranking with which a capture begins, without its first turn and the turn before
   * 400 rev/min are passed.
   *
   * @param seen what the earlier stages found
   * @return empty unless an even number of four cylinders or more, evenly spaced, turns a wheel of
   *     12 slots or more through four cycles or more
   */
  public static Optional<Cranking> of(Observations seen) {
    int cylinders = seen.stated().cylinders();
    if (seen.crank().isEmpty() || cylinders < FEWEST_CYLINDERS || cylinders % 2 != 0) {
      return Optional.empty();
    }
    Turns turns = new Turns(seen.crank().get());
    if (turns.teeth() < 2 || turns.pattern().slots() < FEWEST_SLOTS) {
      return Optional.empty();
    }
    Part part = Part.of(turns, cylinders);
    if (part.cycles() < FEWEST_CYCLES) {
      return Optional.empty();
    }
    return new Fold(turns, part, cylinders).compared(seen);
  }

  /** Angles between which the starter alone turns the engine at a settled speed. */
  private record Part(double from, double to, double spacing, int cylinders) {

    static Part of(Turns turns, int cylinders) {
      double from = turns.angle(0) + CrankAngle.REVOLUTION;
      double to = turns.angle(turns.teeth() - 1);
      for (int i = 0; i < turns.teeth(); i++) {
        if (turns.rpmAt(turns.time(i)) >= SyncLoss.CRANKING_BELOW_RPM) {
          to = turns.angle(i) - CrankAngle.REVOLUTION;
          break;
        }
      }
      double spacing = 2 * CrankAngle.REVOLUTION / cylinders;
      return new Part(from, Math.max(from, to), spacing, cylinders).longestNamed(turns);
    }

    /** The longest stretch of it in which every tooth is named. */
    private Part longestNamed(Turns turns) {
      Part best = new Part(from, from, spacing, cylinders);
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
      return end - start > to - from ? new Part(start, end, spacing, cylinders) : this;
    }

    /** Whole cycles, two compressions being kept back for finding where they begin. */
    int cycles() {
      return (int) Math.floor((to - from - 2 * spacing) / (2 * CrankAngle.REVOLUTION));
    }
  }

  /** Speed by the phase of each compression of the cycle. */
  private static final class Fold {

    private final Turns turns;
    private final Part part;
    private final int cylinders;
    private final double first;
    private final double peakAfter;

    Fold(Turns turns, Part part, int cylinders) {
      this.turns = turns;
      this.part = part;
      this.cylinders = cylinders;
      double[] mean = new double[PHASES];
      for (int s = 0; s < cylinders; s++) {
        double[] own = phases(s, part.from() + part.spacing() / 2);
        Arrays.setAll(mean, p -> mean[p] + own[p]);
      }
      first = part.from() + part.spacing() / 2 + extreme(mean, -1) * part.spacing() / PHASES;
      int after = Math.floorMod(extreme(mean, 1) - extreme(mean, -1), PHASES);
      peakAfter = after * part.spacing() / PHASES;
    }

    /** Mean energy over all cycles at each phase from an angle on, of one compression. */
    private double[] phases(int slot, double from) {
      double[] sum = new double[PHASES];
      for (int c = 0; c < part.cycles(); c++) {
        double at = from + (c * cylinders + slot) * part.spacing();
        Arrays.setAll(sum, p -> sum[p] + energy(at + p * part.spacing() / PHASES));
      }
      return sum;
    }

    /** Square of the mean speed over a quarter of the spacing, (degrees/s)². */
    private double energy(double angle) {
      double half = part.spacing() / 8;
      double rate = 2 * half / (turns.timeAt(angle + half) - turns.timeAt(angle - half));
      return rate * rate;
    }

    private static int extreme(double[] x, int sign) {
      int best = 0;
      for (int i = 1; i < x.length; i++) {
        best = sign * x[i] > sign * x[best] ? i : best;
      }
      return best;
    }

    private double drop(int compression) {
      double middle = first + compression * part.spacing();
      double share = peakAfter / part.spacing();
      return share * energy(middle + peakAfter - part.spacing())
          + (1 - share) * energy(middle + peakAfter)
          - energy(middle);
    }

    Optional<Cranking> compared(Observations seen) {
      double[][] shares = new double[cylinders][part.cycles()];
      for (int c = 0; c < part.cycles(); c++) {
        double mean = 0;
        for (int s = 0; s < cylinders; s++) {
          shares[s][c] = drop(c * cylinders + s);
          mean += shares[s][c] / cylinders;
        }
        if (!(mean > 0)) {
          return Optional.empty();
        }
        for (int s = 0; s < cylinders; s++) {
          shares[s][c] /= mean;
        }
      }
      List<Measured> measured = measured(shares);
      if (!evenlySpaced(measured)) {
        return Optional.empty();
      }
      List<Compression> all = new ArrayList<>();
      for (int s = 0; s < cylinders; s++) {
        all.add(new Compression(pair(seen, first + s * part.spacing()), measured.get(s)));
      }
      double seconds = turns.timeAt(part.to()) - turns.timeAt(part.from());
      double mean = (part.to() - part.from()) / seconds / 6;
      return Optional.of(new Cranking(mean, ripple(mean), part.cycles(), all));
    }

    /** Means, each as uncertain as its own spread or that of all makes it, whichever is more. */
    private static List<Measured> measured(double[][] shares) {
      double[] mean = new double[shares.length];
      double[] variance = new double[shares.length];
      int n = shares[0].length;
      for (int s = 0; s < shares.length; s++) {
        double m = Arrays.stream(shares[s]).average().orElseThrow();
        mean[s] = m;
        variance[s] = Arrays.stream(shares[s]).map(x -> (x - m) * (x - m)).sum() / (n - 1) / n;
      }
      double pooled = Arrays.stream(variance).average().orElseThrow();
      List<Measured> all = new ArrayList<>();
      for (int s = 0; s < shares.length; s++) {
        all.add(new Measured(mean[s], Math.sqrt(Math.max(pooled, variance[s]))));
      }
      return all;
    }

    /**
     * An engine that fires unevenly has its compressions elsewhere than they are looked for. The
     * weakest is not asked: a dead cylinder has no middle.
     */
    private boolean evenlySpaced(List<Measured> shares) {
      int weakest = 0;
      for (int s = 1; s < cylinders; s++) {
        weakest = shares.get(s).value() < shares.get(weakest).value() ? s : weakest;
      }
      for (int s = 0; s < cylinders; s++) {
        int middle = extreme(phases(s, first - part.spacing() / 2), -1);
        if (s != weakest && Math.abs(middle - PHASES / 2) > FURTHEST) {
          return false;
        }
      }
      return true;
    }

    private double ripple(double mean) {
      double sum = 0;
      int n = part.cycles() * cylinders;
      for (int k = 0; k < n; k++) {
        double from = first + (k - 0.5) * part.spacing();
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int i = turns.toothNear(from);
            i < turns.teeth() && turns.angle(i) <= from + part.spacing();
            i++) {
          double rpm = turns.rpmAt(turns.time(i));
          least = Math.min(least, rpm);
          most = Math.max(most, rpm);
        }
        sum += (most - least) / mean / n;
      }
      return sum;
    }

    /** The cylinders that stand at top dead centre at an angle; empty where that is not known. */
    private List<Integer> pair(Observations seen, double angle) {
      List<Integer> order = seen.stated().firing().order();
      OptionalDouble tdc = seen.topDeadCentreDegrees();
      if (order.size() != cylinders || tdc.isEmpty()) {
        return List.of();
      }
      double spaces = (angle - tdc.getAsDouble()) / part.spacing();
      int nearest = (int) Math.rint(spaces);
      if (Math.abs(spaces - nearest) > 0.25) {
        return List.of();
      }
      int place = Math.floorMod(nearest, cylinders / 2);
      return List.of(order.get(place), order.get(place + cylinders / 2));
    }
  }
}
