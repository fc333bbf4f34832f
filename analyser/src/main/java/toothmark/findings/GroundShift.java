package toothmark.findings;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import toothmark.edges.EdgeTrain;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.Spark;
import toothmark.receiver.SyncLoss;
import toothmark.units.Measured;

/**
 * By how much the zero of a sensor's wave moves while coils charge.
 *
 * <p>A wave of height A that is lifted by v stays above zero longer, by 2v/A over its angular
 * frequency: by v / (pi A) of the time from tooth to tooth. The share of that time which each tooth
 * spends above zero is compared with its own usual share, and what grows with the current of a
 * charge (evenly from its start to the spark) is told from a zero that is always off, and from the
 * gain of speed within a tooth, which makes the first part of it longer than the second.
 *
 * @param volts shift at the end of a charge, in the channel's unit
 * @param leastHeight least height of a tooth's wave at a running speed, from zero, in the same unit
 * @param leastRpm speed of that tooth, rev/min
 */
record GroundShift(Measured volts, double leastHeight, double leastRpm) {

  private static final int FEWEST_CHARGING = 30;

  /** A spark rings into the wires for so long, s. */
  private static final double RINGING_SECONDS = 0.5e-3;

  /** Neighbouring teeth share their errors, so that fewer of them count. */
  private static final double SHARED = 2;

  /** A pulse further than this from its tooth's mean is torn by something else. */
  private static final double TORN = 0.15;

  static Optional<GroundShift> of(
      Turns turns, EdgeTrain train, EdgeTrain other, Observations seen) {
    Rows rows = new Rows(turns, train, other);
    for (int i = 1; i + 1 < turns.teeth(); i++) {
      rows.add(i, seen.coils());
    }
    return rows.fit();
  }

  /** Share above zero, current and no current over pi times the height, gain of speed. */
  private static final int COLUMNS = 4;

  /** One row for each tooth: its share above zero, and what may have changed it. */
  private static final class Rows {

    private final Turns turns;
    private final EdgeTrain train;
    private final EdgeTrain other;
    private final double[][] of;
    private final int[] number;
    private int n;
    private int charging;
    private double leastHeight = Double.POSITIVE_INFINITY;
    private double leastRpm;

    Rows(Turns turns, EdgeTrain train, EdgeTrain other) {
      this.turns = turns;
      this.train = train;
      this.other = other;
      of = new double[turns.teeth()][];
      number = new int[turns.teeth()];
    }

    void add(int i, List<CoilTrack> coils) {
      double t = turns.time(i);
      double rpm = turns.rpmAt(t);
      int edge = turns.seen(i) ? ToothSwings.edgeAt(train, t) : -1;
      if (edge < 0
          || rpm < SyncLoss.CRANKING_BELOW_RPM
          || RimForm.besideUneven(turns.pattern(), turns.number(i))) {
        return;
      }
      double pitch = turns.pitchSeconds(t);
      double before = lastBefore(t);
      double current = (current(coils, before) + current(coils, t)) / 2;
      if (!(t - before < pitch) || !(train.swing(edge) > 0) || Double.isNaN(current)) {
        return;
      }
      double height = Math.PI * train.swing(edge) / pitch;
      if (height < leastHeight) {
        leastHeight = height;
        leastRpm = rpm;
      }
      double perVolt = 1 / (Math.PI * height);
      charging += current > 0 ? 1 : 0;
      number[n] = turns.number(i);
      double gains = turns.rpmAt(turns.time(i + 1)) - turns.rpmAt(turns.time(i - 1));
      of[n++] = new double[] {(t - before) / pitch, current * perVolt, perVolt, gains / rpm};
    }

    private double lastBefore(double time) {
      int low = 0;
      int high = other.size();
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (other.time(middle) < time) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      return low == 0 ? Double.NEGATIVE_INFINITY : other.time(low - 1);
    }

    /** Sum of the coils' currents, each 1 at its spark; NaN where a spark rings. */
    private static double current(List<CoilTrack> coils, double time) {
      double sum = 0;
      for (CoilTrack coil : coils) {
        List<Spark> sparks = coil.sparks();
        int next = firstAfter(sparks, time);
        if (next > 0 && time - sparks.get(next - 1).timeSeconds() < RINGING_SECONDS) {
          return Double.NaN;
        }
        double dwell = next < sparks.size() ? sparks.get(next).dwellSeconds().orElse(0) : 0;
        if (dwell > 0) {
          sum += Math.max(0, 1 - (sparks.get(next).timeSeconds() - time) / dwell);
        }
      }
      return sum;
    }

    private static int firstAfter(List<Spark> sparks, double time) {
      int low = 0;
      int high = sparks.size();
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (sparks.get(middle).timeSeconds() <= time) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      return low;
    }

    Optional<GroundShift> fit() {
      if (charging < FEWEST_CHARGING) {
        return Optional.empty();
      }
      takeOffOwn();
      int whole = 0;
      for (int i = 0; i < n; i++) {
        if (Math.abs(of[i][0]) < TORN) {
          of[whole++] = of[i];
        }
      }
      double[] y = new double[whole];
      double[][] x = new double[whole][];
      for (int i = 0; i < whole; i++) {
        y[i] = of[i][0];
        x[i] = Arrays.copyOfRange(of[i], 1, COLUMNS);
      }
      OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
      fit.setNoIntercept(true);
      try {
        fit.newSampleData(y, x);
        double u = fit.estimateRegressionParametersStandardErrors()[0] * SHARED;
        Measured volts = new Measured(fit.estimateRegressionParameters()[0], u);
        return Optional.of(new GroundShift(volts, leastHeight, leastRpm));
      } catch (SingularMatrixException e) {
        return Optional.empty();
      }
    }

    /** Takes the mean of its tooth off each value. */
    private void takeOffOwn() {
      double[][] sum = new double[turns.pattern().teeth() + 1][COLUMNS];
      int[] count = new int[sum.length];
      for (int i = 0; i < n; i++) {
        count[number[i]]++;
        for (int j = 0; j < COLUMNS; j++) {
          sum[number[i]][j] += of[i][j];
        }
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < COLUMNS; j++) {
          of[i][j] -= sum[number[i]][j] / count[number[i]];
        }
      }
    }
  }
}
