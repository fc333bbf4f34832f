package toothmark.ignition;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/** Charges and sparks of one channel, before the crank's angle is known. */
final class Firings {

  /** No coil of any use charges for less: a quarter of the shortest in practice. */
  private static final double SHORTEST_DWELL_SECONDS = 0.2e-3;

  private int size;
  private double[] chargeStarts = new double[64];
  private double[] sparks = new double[64];
  private double[] uncertainties = new double[64];
  private double[] burns = new double[64];
  private final ChargingLevel level;
  private Optional<ChargeCurrent> charge = Optional.empty();

  Firings(ChargingLevel level) {
    this.level = level;
  }

  ChargingLevel level() {
    return level;
  }

  int size() {
    return size;
  }

  /** Start of charging before a spark, s; not a number when it was not seen. */
  double chargeStart(int index) {
    return chargeStarts[index];
  }

  double spark(int index) {
    return sparks[index];
  }

  /** How long a spark burnt, s; not a number when it was not seen. */
  double burn(int index) {
    return burns[index];
  }

  /** The form of the charges; empty when it was not seen. */
  Optional<ChargeCurrent> charge() {
    return charge;
  }

  double uncertainty(int index) {
    return uncertainties[index];
  }

  /** Length of charge, s; not a number when its start was not seen. */
  double dwell(int index) {
    return sparks[index] - chargeStarts[index];
  }

  void add(double chargeStart, double spark, double uncertainty) {
    if (size == sparks.length) {
      chargeStarts = Arrays.copyOf(chargeStarts, 2 * size);
      sparks = Arrays.copyOf(sparks, 2 * size);
      uncertainties = Arrays.copyOf(uncertainties, 2 * size);
      burns = Arrays.copyOf(burns, 2 * size);
    }
    chargeStarts[size] = chargeStart;
    sparks[size] = spark;
    uncertainties[size] = uncertainty;
    burns[size] = Double.NaN;
    size++;
  }

  /** The last spark burnt so long, s. */
  void burnt(double seconds) {
    burns[size - 1] = seconds;
  }

  void charged(Optional<ChargeCurrent> form) {
    charge = form;
  }

  /**
   * The same without charges shorter than a share of the median charge, or than any coil's: those
   * are flickers.
   */
  Firings withoutFlickers(double shareOfMedian) {
    double[] dwells = new double[size];
    int n = 0;
    for (int i = 0; i < size; i++) {
      if (!Double.isNaN(dwell(i))) {
        dwells[n++] = dwell(i);
      }
    }
    double median = n == 0 ? 0 : new Median().evaluate(dwells, 0, n);
    double floor = Math.max(SHORTEST_DWELL_SECONDS, shareOfMedian * median);
    Firings kept = new Firings(level);
    for (int i = 0; i < size; i++) {
      if (Double.isNaN(dwell(i)) || dwell(i) >= floor) {
        kept.add(chargeStarts[i], sparks[i], uncertainties[i]);
        kept.burnt(burns[i]);
      }
    }
    return kept;
  }

  /** The same with charges joined where one begins at once after the spark before. */
  Firings withoutBreaks(double seconds) {
    Firings joined = new Firings(level);
    for (int i = 0; i < size; i++) {
      double start = chargeStarts[i];
      while (i + 1 < size && chargeStarts[i + 1] - sparks[i] < seconds) {
        i++;
      }
      joined.add(start, sparks[i], uncertainties[i]);
    }
    return joined;
  }
}
