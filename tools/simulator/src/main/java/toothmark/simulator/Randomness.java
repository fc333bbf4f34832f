package toothmark.simulator;

/**
 * Reproducible random numbers: the same seed gives the same numbers on every machine.
 *
 * <p>Uniform numbers by SplitMix64 (Steele, Lea and Flood 2014, doi:10.1145/2714064.2660195),
 * normal numbers by the ziggurat of Marsaglia and Tsang (2000, doi:10.18637/jss.v005.i08) in the
 * double-precision form of Doornik (2005).
 */
final class Randomness {
  private static final int LAYERS = 128;
  private static final double TAIL_START = 3.442619855899;
  private static final double LAYER_AREA = 9.91256303526217e-3;
  private static final double[] EDGE = new double[LAYERS + 1];
  private static final double[] RATIO = new double[LAYERS];

  static {
    EDGE[0] = LAYER_AREA / density(TAIL_START);
    EDGE[1] = TAIL_START;
    for (int i = 2; i < LAYERS; i++) {
      double height = LAYER_AREA / EDGE[i - 1] + density(EDGE[i - 1]);
      EDGE[i] = StrictMath.sqrt(-2.0 * StrictMath.log(height));
    }
    EDGE[LAYERS] = 0.0;
    for (int i = 0; i < LAYERS; i++) {
      RATIO[i] = EDGE[i + 1] / EDGE[i];
    }
  }

  private long state;

  private Randomness(long seed) {
    state = seed;
  }

  /** A source of its own for one purpose, so that adding a consumer leaves the others unchanged. */
  static Randomness of(long seed, String purpose) {
    long hash = 0xcbf29ce484222325L;
    for (int i = 0; i < purpose.length(); i++) {
      hash = (hash ^ purpose.charAt(i)) * 0x100000001b3L;
    }
    return new Randomness(mix(seed * 0x9e3779b97f4a7c15L + hash));
  }

  private static double density(double x) {
    return StrictMath.exp(-0.5 * x * x);
  }

  private static long mix(long value) {
    long z = (value ^ (value >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }

  private long next() {
    state += 0x9e3779b97f4a7c15L;
    return mix(state);
  }

  /** Uniform in [0, 1). */
  double uniform() {
    return (next() >>> 11) * 0x1.0p-53;
  }

  /** Uniform in [low, high). */
  double uniform(double low, double high) {
    return low + (high - low) * uniform();
  }

  /** Uniform in its logarithm in [low, high), both positive. */
  double logUniform(double low, double high) {
    return low * StrictMath.exp(uniform() * StrictMath.log(high / low));
  }

  /** A whole number in [0, bound). */
  int below(int bound) {
    return (int) (uniform() * bound);
  }

  /** True with this probability. */
  boolean chance(double probability) {
    return uniform() < probability;
  }

  /** Exponentially distributed with this mean. */
  double exponential(double mean) {
    return -mean * StrictMath.log(1.0 - uniform());
  }

  /** Standard normal. */
  double gaussian() {
    while (true) {
      long bits = next();
      int layer = (int) (bits & (LAYERS - 1));
      double u = 2.0 * ((bits >>> 11) * 0x1.0p-53) - 1.0;
      if (Math.abs(u) < RATIO[layer]) {
        return u * EDGE[layer];
      }
      if (layer == 0) {
        return tail(u < 0.0);
      }
      double x = u * EDGE[layer];
      double outer = StrictMath.exp(-0.5 * (EDGE[layer] * EDGE[layer] - x * x));
      double inner = StrictMath.exp(-0.5 * (EDGE[layer + 1] * EDGE[layer + 1] - x * x));
      if (inner + uniform() * (outer - inner) < 1.0) {
        return x;
      }
    }
  }

  private double tail(boolean negative) {
    double x;
    double y;
    do {
      x = StrictMath.log(1.0 - uniform()) / TAIL_START;
      y = StrictMath.log(1.0 - uniform());
    } while (-2.0 * y < x * x);
    return negative ? x - TAIL_START : TAIL_START - x;
  }
}
