package toothmark.edges;

import java.util.function.Predicate;

/**
 * Looks for hum of the mains over a wave, so that it can be taken away before edges are timed.
 *
 * <p>Hum moves the edges of a cranking engine by tenths of a degree. It is looked for in the flux
 * at the extrema, where the teeth themselves cancel ({@link FluxRegression}), at 50 and 60 Hz
 * within 1 %, and it must stand out from what the same record shows at frequencies beside: the
 * turning of an engine gives lines as well, but never one alone.
 */
final class HumFinder {

  private static final double[] MAINS_HZ = {50, 60};
  private static final double TOLERANCE = 0.01;

  /** Between frequencies tried, in lines of the record. */
  private static final double STEP = 0.3;

  private static final double FROM_HZ = 24;
  private static final double TO_HZ = 131;

  /** Lines of the mains reach this far, as a share, and a little more in a short record. */
  private static final double MAINS_REACH = 0.03;

  /** Hum must explain this many times more than any frequency beside. */
  private static final double STANDS_OUT = 4.0;

  /** Share of the voltage (without its fast part) that hum which drowns the teeth explains. */
  private static final double STRONG_SHARE = 0.15;

  /** Teeth come to light when there are this many times more extrema than before, ... */
  private static final double MORE_EXTREMA = 1.3;

  /** ... and their swings scatter by less than this share. */
  private static final double ALIKE = 0.2;

  /** A correction larger than this share of the hum is a fit gone wild. */
  private static final double WILD = 0.5;

  /** Twice the mains explains less than this of it; of an engine's lines it may explain more. */
  private static final double TWICE = 0.5;

  private static final double SIGNIFICANT = 8.0;
  private static final int HARMONICS = 3;
  private static final int LEAST_EXTREMA = 60;

  private static final int ROUNDS = 2;
  private static final double LEAST_SECONDS = 0.2;

  private HumFinder() {}

  /**
   * Takes hum out of a wave.
   *
   * @param wave as recorded
   * @param extrema of its flux
   * @return the hum; none when nothing stands out, or when taking it out does not make the teeth
   *     more alike
   */
  static Harmonics find(Wave wave, Extrema extrema) {
    double seconds = wave.signal().span().seconds();
    if (seconds < LEAST_SECONDS) {
      return Harmonics.none();
    }
    Harmonics hum = Harmonics.none();
    if (extrema.size() >= LEAST_EXTREMA) {
      FluxSteps steps = FluxSteps.of(extrema);
      double scatter = steps.scatter();
      hum = settle(wave, weak(wave, steps, seconds), s -> s.scatter() <= scatter);
    }
    int many = (int) (MORE_EXTREMA * extrema.size());
    return hum.isNone() ? strong(wave, seconds, s -> s.size() > many && s.scatter() < ALIKE) : hum;
  }

  /** Hum that leaves the teeth as extrema of flux. */
  private static Harmonics weak(Wave wave, FluxSteps steps, double seconds) {
    double ts = wave.signal().intervalSeconds();
    double step = STEP / seconds;
    double[] explained =
        new LineScan(steps, FROM_HZ * ts, step * ts).explained((int) ((TO_HZ - FROM_HZ) / step));
    double mains = best(explained, step, seconds);
    return mains == 0 ? Harmonics.none() : fit(steps, mains * ts, step * ts);
  }

  /** Hum that drowns the teeth: taken out on trial, it must bring them to light. */
  private static Harmonics strong(Wave wave, double seconds, Predicate<FluxSteps> better) {
    FluxSteps blocks = FluxSteps.ofBlocks(wave);
    double ts = wave.signal().intervalSeconds();
    double step = STEP / seconds;
    for (double mains : MAINS_HZ) {
      int count = (int) Math.ceil(2 * TOLERANCE * mains / step) + 1;
      double from = mains * (1 - TOLERANCE);
      double[] explained = new LineScan(blocks, from * ts, step * ts).explained(count);
      int best = 0;
      for (int k = 1; k < count; k++) {
        best = explained[k] > explained[best] ? k : best;
      }
      double twice = new LineScan(blocks, 2 * (from + best * step) * ts, 0).explained(1)[0];
      if (explained[best] > STRONG_SHARE * blocks.squares() && twice < TWICE * explained[best]) {
        Harmonics hum = fit(blocks, (from + best * step) * ts, step * ts);
        Harmonics settled = settle(wave, hum, better);
        if (!settled.isNone()) {
          return settled;
        }
      }
    }
    return Harmonics.none();
  }

  private static Harmonics fit(FluxSteps steps, double near, double step) {
    double frequency = sharpen(steps, near, step);
    FluxRegression fit = FluxRegression.of(steps, frequency, HARMONICS);
    return fit.significance(1) > SIGNIFICANT ? harmonics(fit, frequency) : Harmonics.none();
  }

  /** Extrema feel the hum a little, so what they say of it gets better as it goes. */
  private static Harmonics settle(Wave wave, Harmonics first, Predicate<FluxSteps> better) {
    Harmonics hum = first;
    for (int round = 0; round < ROUNDS && !hum.isNone(); round++) {
      Extrema left = FluxEdges.find(wave.without(hum));
      if (left.size() < LEAST_EXTREMA) {
        return Harmonics.none();
      }
      FluxSteps steps = FluxSteps.of(left);
      if (round == 0 && !better.test(steps)) {
        return Harmonics.none();
      }
      double frequency = hum.cyclesPerSample();
      Harmonics rest = harmonics(FluxRegression.of(steps, frequency, HARMONICS), frequency);
      if (rest.amplitude() > WILD * first.amplitude()) {
        return Harmonics.none();
      }
      hum = hum.plus(rest);
    }
    return hum;
  }

  /** The frequency near the given one that leaves least, by parabola. */
  private static double sharpen(FluxSteps steps, double at, double step) {
    double before = FluxRegression.of(steps, at - step, 1).squaresLeft();
    double middle = FluxRegression.of(steps, at, 1).squaresLeft();
    double after = FluxRegression.of(steps, at + step, 1).squaresLeft();
    double bend = before - 2 * middle + after;
    double shift = bend > 0 ? (before - after) / (2 * bend) : 0;
    return at + Math.max(-1, Math.min(1, shift)) * step;
  }

  /** The mains frequency that stands out; 0 when none does. */
  private static double best(double[] explained, double step, double seconds) {
    int best = 0;
    for (int k = 0; k < explained.length; k++) {
      boolean mains = awayFromMains(FROM_HZ + k * step) <= TOLERANCE;
      best = mains && explained[k] > explained[best] ? k : best;
    }
    double found = FROM_HZ + best * step;
    double limit = explained[best] / STANDS_OUT;
    for (int k = 0; k < explained.length; k++) {
      double f = FROM_HZ + k * step;
      double reach = MAINS_REACH + 1 / (seconds * f);
      boolean beside = awayFromMains(f) > reach && Math.abs(f / found - 2) > reach;
      boolean twice = Math.abs(f / found - 2) <= TOLERANCE;
      if (beside && explained[k] > limit || twice && explained[k] > TWICE * explained[best]) {
        return 0;
      }
    }
    return awayFromMains(found) <= TOLERANCE ? found : 0;
  }

  private static double awayFromMains(double f) {
    double least = 1;
    for (double mains : MAINS_HZ) {
      least = Math.min(least, Math.abs(f / mains - 1));
    }
    return least;
  }

  /** The voltage is the slope of the flux. */
  private static Harmonics harmonics(FluxRegression fit, double cyclesPerSample) {
    double[] cosines = new double[HARMONICS];
    double[] sines = new double[HARMONICS];
    for (int h = 1; h <= HARMONICS; h++) {
      if (h == 1 || fit.significance(h) > SIGNIFICANT) {
        double turn = 2 * Math.PI * h * cyclesPerSample;
        cosines[h - 1] = turn * fit.sine(h);
        sines[h - 1] = -turn * fit.cosine(h);
      }
    }
    return Harmonics.of(cyclesPerSample, cosines, sines);
  }
}
