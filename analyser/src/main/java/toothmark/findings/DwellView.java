package toothmark.findings;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.Spark;
import toothmark.receiver.SyncLoss;

/**
 * How long coils charge while the engine runs.
 *
 * @param medianSeconds middle of all charging times, s
 * @param spread half of the range that holds two thirds of them, as a share of the median
 * @param duty share of the time from spark to spark for which a coil charges, at the median
 * @param sparks how many it rests on
 */
record DwellView(double medianSeconds, double spread, double duty, int sparks) {

  private static final int FEWEST = 5;

  static Optional<DwellView> of(Observations seen) {
    double[] dwell = new double[0];
    double[] duty = new double[0];
    for (CoilTrack c : seen.coils()) {
      List<Spark> known = c.sparks().stream().filter(DwellView::running).toList();
      dwell =
          join(dwell, known.stream().mapToDouble(s -> s.dwellSeconds().orElseThrow()).toArray());
      duty = join(duty, known.stream().mapToDouble(s -> c.duty(s).orElseThrow()).toArray());
    }
    if (dwell.length < FEWEST) {
      return Optional.empty();
    }
    Arrays.sort(dwell);
    Arrays.sort(duty);
    int n = dwell.length;
    double median = dwell[n / 2];
    double spread = (dwell[(int) (0.84 * (n - 1))] - dwell[(int) (0.16 * (n - 1))]) / 2 / median;
    return Optional.of(new DwellView(median, spread, duty[n / 2], n));
  }

  private static boolean running(Spark s) {
    return s.dwellSeconds().isPresent()
        && s.turn() == Spark.Turn.FIRST
        && s.crank().isPresent()
        && s.crank().get().rpm() >= SyncLoss.CRANKING_BELOW_RPM;
  }

  private static double[] join(double[] a, double[] b) {
    double[] all = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, all, a.length, b.length);
    return all;
  }
}
