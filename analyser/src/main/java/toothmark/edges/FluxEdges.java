package toothmark.edges;

import java.util.function.IntToDoubleFunction;

/**
 * Edges of a variable-reluctance wave: every tooth centre is a maximum of flux, every slot centre a
 * minimum, timed by the zero of the voltage there.
 *
 * <p>The falling train holds the maxima, the rising train the minima.
 */
final class FluxEdges {

  /** A reversal below this share of the usual swing is part of a tooth, not one. */
  private static final double HYSTERESIS = 0.12;

  /** While nothing is known of the teeth, ask for more. */
  private static final double FIRST_HYSTERESIS = 0.25;

  /** Times what noise alone walks over half a tooth (standard deviations). */
  private static final double NOISE_WALK = 1.2;

  private static final double NOISE_WALK_LIMIT = 0.5;

  private FluxEdges() {}

  /** The extrema that are teeth or slots, or disturbances of like size. */
  static Extrema find(Wave wave) {
    Extrema all = FluxZigzag.of(wave);
    IntToDoubleFunction first = SwingScale.fromBlocks(all, wave);
    Extrema teeth = all.standingOut(i -> FIRST_HYSTERESIS * first.applyAsDouble(i));
    for (int round = 0; round < 2; round++) {
      teeth = all.standingOut(hysteresis(all, teeth, wave.walkNoise()));
    }
    return teeth;
  }

  /** Carries the scale that the teeth show over to all extrema, asked for in order. */
  private static IntToDoubleFunction hysteresis(Extrema all, Extrema teeth, double noise) {
    double[] least = leastSwings(teeth, noise);
    int[] t = {0};
    return i -> {
      while (t[0] + 1 < teeth.size() && teeth.position(t[0] + 1) <= all.position(i)) {
        t[0]++;
      }
      return least[t[0]];
    };
  }

  /** The least swing that counts around each of the teeth. */
  private static double[] leastSwings(Extrema teeth, double noise) {
    double[] scale = SwingScale.fromSwings(teeth);
    double[] out = new double[teeth.size()];
    for (int t = 0; t < out.length; t++) {
      double walk = NOISE_WALK * noise * Math.sqrt(usualDistance(teeth, t));
      out[t] = Math.max(HYSTERESIS * scale[t], Math.min(walk, NOISE_WALK_LIMIT * scale[t]));
    }
    return out;
  }

  private static double usualDistance(Extrema e, int at) {
    int from = Math.max(0, Math.min(at - 2, e.size() - 6));
    int to = Math.min(e.size() - 1, from + 5);
    double[] d = new double[Math.max(0, to - from)];
    for (int i = from; i < to; i++) {
      d[i - from] = e.distance(i);
    }
    return SwingScale.quantile(d, 0.5);
  }
}
