package toothmark.ignition;

import toothmark.capture.SampledSignal;

/**
 * Firings of a coil's switched terminal.
 *
 * <p>The terminal rests at battery voltage, is pulled near ground while the coil charges, flies
 * back by hundreds of volts at the spark, and then shows the burning spark and ringing about the
 * battery voltage. Only a stay near ground counts as charging, and only a rise well above battery
 * voltage out of it as a spark; ringing does the second without the first, and a charge that is let
 * go softly the first without the second. The spark burns while the terminal stands above the
 * middle between battery voltage and that of the burning spark; ringing before and after it does so
 * for half a period at a time.
 */
final class PrimaryFirings {

  /** Ringing after the spark has half periods below this; a charge lasts longer. */
  private static final double SHORTEST_CHARGE_SECONDS = 0.25e-3;

  /** By then a burn has begun: what rings after the flyback has faded, s. */
  private static final double LATEST_BURN_SECONDS = 0.4e-3;

  /** The burning spark stands so far above rest, of the way from charging to rest, at least. */
  private static final double BURN_SHARE = 0.5;

  /** A charge ends softly once the terminal has rested above the middle level this long. */
  private static final double LET_GO_SECONDS = 0.2e-3;

  private static final double FLICKER_SHARE = 0.05;

  /**
   * Of all samples at least this share stands at the level of charging, 0.1 ms in 25 of a running
   * engine; on the starter, or where the engine mostly stands, a smaller one.
   */
  private static final double[] CHARGING_SHARES = {4e-3, 1e-3, 2.5e-4, 6e-5};

  /** Half way up from charging so few samples lie, against those at its level, at most. */
  private static final double PASSING = 0.2;

  private static final double USUALLY_ABOVE = 0.9;

  /** Battery voltage is seen at least this often, against the level of the burning spark. */
  private static final double RESTING_SHARE = 0.15;

  private final SampledSignal signal;
  private final double middle;
  private final double flyback;
  private final double burning;
  private final Firings out = new Firings(ChargingLevel.LOW);

  private double lowSince = Double.NaN;
  private boolean startSeen;
  private boolean charged;
  private double highSince = Double.NaN;
  private double sparkAt = Double.NaN;
  private double burnSince = Double.NaN;

  private PrimaryFirings(SampledSignal signal, double middle, double flyback, double burning) {
    this.signal = signal;
    this.middle = middle;
    this.flyback = flyback;
    this.burning = burning;
  }

  static Firings read(SampledSignal signal) {
    Histogram levels = Histogram.of(signal);
    double charging = charging(levels);
    double apart = 0.15 * (levels.quantile(USUALLY_ABOVE) - charging);
    double high = levels.commonest(charging + apart, levels.highest());
    double resting = resting(levels, charging, high, apart);
    double above = resting + BURN_SHARE * (resting - charging);
    double burn = levels.commonest(above, levels.highest());
    PrimaryFirings reader =
        new PrimaryFirings(signal, (charging + resting) / 2, above, (resting + burn) / 2);
    SampleScan.each(signal, reader::visit);
    return reader.out.withoutFlickers(FLICKER_SHARE);
  }

  /** The level near ground, by the greatest share that finds one apart from the resting level. */
  private static double charging(Histogram levels) {
    double above = levels.quantile(USUALLY_ABOVE);
    for (double share : CHARGING_SHARES) {
      double level = levels.lowestPlateau(share);
      double halfWay = level + (above - level) / 2;
      if (levels.samplesNear(halfWay) < PASSING * levels.samplesNear(level)) {
        return level;
      }
    }
    return levels.lowestPlateau(CHARGING_SHARES[0]);
  }

  /** At high speed the burning spark may stand longer than battery voltage, which lies below it. */
  private static double resting(Histogram levels, double charging, double high, double apart) {
    double between = levels.commonest(charging + apart, Math.max(charging + apart, high - apart));
    return levels.samplesNear(between) > RESTING_SHARE * levels.samplesNear(high) ? between : high;
  }

  private void visit(long index, double value) {
    double time = signal.timeOf(index);
    burn(index, value);
    if (value < middle) {
      low(index, time);
    } else {
      high(index, time, value);
    }
  }

  private void low(long index, double time) {
    highSince = Double.NaN;
    if (Double.isNaN(lowSince)) {
      lowSince = signal.timeOf(index - 0.5);
      startSeen = index > 0;
    }
    charged |= time - lowSince >= SHORTEST_CHARGE_SECONDS;
  }

  private void high(long index, double time, double value) {
    if (charged && value >= flyback) {
      double spark = signal.timeOf(index - 0.5);
      double u = signal.intervalSeconds() / Math.sqrt(12);
      out.add(startSeen ? lowSince : Double.NaN, spark, u);
      sparkAt = spark;
      burnSince = spark;
      reset();
    } else if (Double.isNaN(highSince)) {
      highSince = time;
    }
    if (!charged || time - highSince > LET_GO_SECONDS) {
      reset();
    }
  }

  /** A burn is a long stay above its level that begins soon after the spark. */
  private void burn(long index, double value) {
    if (Double.isNaN(sparkAt)) {
      return;
    }
    double step = signal.timeOf(index - 0.5);
    if (value >= burning) {
      burnSince = Double.isNaN(burnSince) ? step : burnSince;
      return;
    }
    boolean burnt = step - burnSince >= SHORTEST_CHARGE_SECONDS;
    if (burnt) {
      out.burnt(step - sparkAt);
    }
    sparkAt = burnt || step - sparkAt > LATEST_BURN_SECONDS ? Double.NaN : sparkAt;
    burnSince = Double.NaN;
  }

  private void reset() {
    lowSince = Double.NaN;
    charged = false;
  }
}
