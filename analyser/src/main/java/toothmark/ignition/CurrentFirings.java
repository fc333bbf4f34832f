package toothmark.ignition;

import java.util.Arrays;
import org.apache.commons.math3.util.ResizableDoubleArray;
import toothmark.capture.SampledSignal;

/**
 * Firings of a current clamp: the primary current ramps up from rest and breaks at the spark.
 *
 * <p>The start of charging is the foot of the ramp, by a straight line through its rise from 10 to
 * 30 % of the usual peak (the ramp of a coil far from saturation is straight: i = V t / L). The
 * form of the ramp is told by {@link ChargeRamp}.
 */
final class CurrentFirings {

  /** The peaks of the ramps stand at least so long in all, s; rarer samples are spikes. */
  private static final double PEAKS_SECONDS = 1e-3;

  private static final double PEAKS_SHARE = 0.001;

  /** A ramp goes so much further to one side than noise and ringing go to the other. */
  private static final double ONE_SIDED = 3;

  private static final double FOOT_LOW = 0.1;
  private static final double FOOT_HIGH = 0.3;

  /** The current has broken when it falls under this share of the ramp's own peak. */
  private static final double BROKEN = 0.5;

  /** The break began at the last sample above this share of the ramp's own peak. */
  private static final double STANDING = 0.9;

  private final SampledSignal signal;
  private final double rest;
  private final double sign;
  private final double usualPeak;
  private final boolean charges;

  /** Whether the current has come down since the last break: one that fades is no new ramp. */
  private boolean rested = true;

  /** A longer ramp is not looked at, samples. */
  private static final int LONGEST_RAMP = 1 << 16;

  private final Firings out = new Firings(ChargingLevel.HIGH);

  private double before = Double.NaN;
  private double lowCrossing = Double.NaN;
  private double highCrossing = Double.NaN;
  private double peak;
  private long standing;
  private long rampFrom;
  private final ResizableDoubleArray ramp = new ResizableDoubleArray();
  private final ChargeCurrent.Gathered forms = new ChargeCurrent.Gathered();

  private CurrentFirings(SampledSignal signal, Histogram levels) {
    this.signal = signal;
    this.rest = restingLevel(levels);
    double share =
        Math.min(PEAKS_SHARE, PEAKS_SECONDS / (signal.size() * signal.intervalSeconds()));
    double up = levels.quantile(1 - share) - rest;
    double down = rest - levels.quantile(share);
    this.sign = up >= down ? 1 : -1;
    this.usualPeak = Math.max(up, down);
    this.charges = usualPeak > ONE_SIDED * Math.min(up, down);
  }

  static Firings read(SampledSignal signal) {
    CurrentFirings reader = new CurrentFirings(signal, Histogram.of(signal));
    if (reader.charges) {
      SampleScan.each(signal, reader::visit);
      reader.out.charged(reader.forms.summed());
    }
    return reader.out;
  }

  /** Of the two levels at which the clamp stands most the one nearer to no current. */
  private static double restingLevel(Histogram levels) {
    double first = levels.commonest();
    double apart = 0.2 * (levels.quantile(0.999) - levels.quantile(0.001));
    double second = levels.commonestAwayFrom(first, apart);
    return Math.abs(first) <= Math.abs(second) ? first : second;
  }

  private void visit(long index, double value) {
    double current = sign * (value - rest);
    double low = FOOT_LOW * usualPeak;
    if (current >= low && !(before >= low)) {
      lowCrossing = crossing(index, current, low);
      ramp.clear();
      rampFrom = index;
    }
    if (current >= low && ramp.getNumElements() < LONGEST_RAMP) {
      ramp.addElement(current);
    }
    rested |= current < low;
    if (rested && current >= FOOT_HIGH * usualPeak) {
      charging(index, current);
    }
    if (!Double.isNaN(highCrossing) && current < BROKEN * peak) {
      broken();
    }
    before = current;
  }

  private void charging(long index, double current) {
    if (Double.isNaN(highCrossing)) {
      highCrossing = crossing(index, current, FOOT_HIGH * usualPeak);
      peak = current;
    }
    peak = Math.max(peak, current);
    if (current >= STANDING * peak) {
      standing = index;
    }
  }

  private void broken() {
    double foot = lowCrossing - (highCrossing - lowCrossing) * FOOT_LOW / (FOOT_HIGH - FOOT_LOW);
    form(foot);
    out.add(foot, signal.timeOf(standing + 0.5), signal.intervalSeconds() / Math.sqrt(12));
    lowCrossing = Double.NaN;
    highCrossing = Double.NaN;
    peak = 0;
    rested = false;
  }

  private void form(double foot) {
    int samples = (int) Math.min(LONGEST_RAMP, standing - rampFrom + 1);
    if (!Double.isNaN(foot) && samples < LONGEST_RAMP && forms.wanted()) {
      double dwell = signal.timeOf(standing + 0.5) - foot;
      double[] current = Arrays.copyOf(ramp.getElements(), samples);
      ChargeRamp.tell(current, signal.timeOf(rampFrom) - foot, signal.intervalSeconds())
          .ifPresent(found -> forms.add(found, dwell));
    }
  }

  /** Time of passing a level between the sample before and this one; not a number at the start. */
  private double crossing(long index, double current, double level) {
    return signal.timeOf(index - (current - level) / (current - before));
  }
}
