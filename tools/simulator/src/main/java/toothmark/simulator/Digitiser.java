package toothmark.simulator;

/** An oscilloscope's input stage: coupling, offset, noise, range and steps. */
final class Digitiser {
  private static final double ROOM = 1.1;
  private static final double[] RANGE_STEPS = {1.0, 2.0, 5.0, 10.0};

  private final Recorder recorder;
  private final Recorder.Front front;

  Digitiser(Recorder recorder) {
    this.recorder = recorder;
    front = recorder.front();
  }

  /** The crank channel, with offset and coupling; changes the given samples. */
  float[] crank(double[] volts, Randomness noise) {
    for (int i = 0; i < volts.length; i++) {
      volts[i] += front.offsetVolts();
    }
    Filters.highPass(volts, recorder.sampleRateHz(), front.highPassHz());
    double range = front.rangeVolts() > 0.0 ? front.rangeVolts() : rangeFor(volts);
    return plain(volts, range, noise);
  }

  /** Noise, steps and clipping alone. */
  float[] plain(double[] volts, double rangeVolts, Randomness noise) {
    float[] kept = new float[volts.length];
    double rms = front.noiseVolts();
    if (front.bits() == 0) {
      for (int i = 0; i < kept.length; i++) {
        kept[i] = (float) (rms == 0.0 ? volts[i] : volts[i] + rms * noise.gaussian());
      }
      return kept;
    }
    double codes = 1L << (front.bits() - 1);
    double perVolt = codes / rangeVolts;
    for (int i = 0; i < kept.length; i++) {
      double code = Math.rint((volts[i] + rms * noise.gaussian()) * perVolt);
      kept[i] = (float) (Math.max(-codes, Math.min(codes - 1.0, code)) / perVolt);
    }
    return kept;
  }

  /** The smallest 1-2-5 step that holds the signal. */
  private static double rangeFor(double[] volts) {
    double peak = 1e-3;
    for (double v : volts) {
      peak = Math.max(peak, Math.abs(v));
    }
    double decade = StrictMath.pow(10.0, Math.floor(StrictMath.log10(peak * ROOM)));
    for (double step : RANGE_STEPS) {
      if (peak * ROOM <= step * decade) {
        return step * decade;
      }
    }
    return RANGE_STEPS[RANGE_STEPS.length - 1] * decade;
  }
}
