package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
import toothmark.units.Say;

/**
 * A steady line in the times of the teeth that is none of the engine's own: of the mains or a pump
 * at a fixed frequency, or of a generator at a fixed number of cycles a turn.
 *
 * <p>What is searched is how much each tooth comes early or late against the mean of its neighbours
 * on both sides, each tooth's own mean taken off. A line must stand out of what is usual at the
 * frequencies beside it.
 *
 * @param frequency of the line, in the axis's unit
 * @param axis over which it is steady
 * @param degrees how far it moves teeth each way
 */
record ToothHum(double frequency, Axis axis, double degrees) {

  /** Over what a line is steady. */
  enum Axis {
    /** Time; frequencies in Hz. */
    TIME(20),
    /** The crank's angle; frequencies in cycles a turn. */
    ANGLE(1);

    private final double lowest;

    Axis(double lowest) {
      this.lowest = lowest;
    }
  }

  /** Highest frequency searched, as a share of that of the teeth. */
  private static final double HIGHEST_SHARE = 0.5;

  private static final int FEWEST_TEETH = 100;
  private static final int FEWEST_LINES = 40;

  /** Lines to each side that show what is usual near one. */
  private static final int BESIDE = 60;

  /**
   * And close by, in the least differences that the record's length can show: cylinders that push
   * now more, now less make a broad foot, a hum a sharp line.
   */
  private static final int CLOSE = 5;

  /** Chance of white noise to pass this in a thousand lines is under one in a million. */
  private static final double STANDS_OUT = 20;

  /**
   * Cycles a turn above which the engine moves no tooth by as much as matters: an angle falls with
   * the square of the order, and 5 Nm on 0.15 kg m² swing an idling crank by 0.003 degrees at 10.
   */
  private static final double ENGINE_ORDERS = 10;

  /** A line's like on the other side has at least this share of its power. */
  private static final double MIRRORED = 0.2;

  /** Above this spread the engine's ripple itself changes so that no line stays sharp in angle. */
  private static final double CALM = 0.2;

  /** Above this spread of speed the engine's own frequencies wander over all others. */
  private static final double STEADY = 0.05;

  private static final double WATCH_DEGREES = 0.08;

  void describe(Draft d) {
    if (axis == Axis.TIME) {
      d.saw("in-time", Say.degrees(degrees), Say.scaled(frequency, "Hz"));
    } else {
      d.saw("in-angle", Say.degrees(degrees), Say.number(frequency, 1));
    }
  }

  static Optional<ToothHum> of(Turns turns, ToothLateness late) {
    if (late.size() < FEWEST_TEETH) {
      return Optional.empty();
    }
    double spread = turns.spread();
    return Optional.of(late)
        .filter(x -> spread <= STEADY)
        .flatMap(x -> line(x, Axis.TIME, spread))
        .or(() -> spread > CALM ? Optional.empty() : line(late, Axis.ANGLE, 0));
  }

  /** The strongest line over an axis, the engine's own left out as far as the speed is steady. */
  private static Optional<ToothHum> line(ToothLateness late, Axis axis, double spread) {
    double[] places = late.places();
    double[] at = axis == Axis.TIME ? late.times() : places;
    double span = at[at.length - 1] - at[0];
    double rev = (places[places.length - 1] - places[0]) / span;
    Periodogram p = Periodogram.of(at, late.degrees(), HIGHEST_SHARE * at.length / span);
    double[] power = new double[p.lines()];
    int best = 0;
    for (int k = (int) Math.ceil(axis.lowest / p.stepHertz()); k < power.length; k++) {
      boolean felt = axis == Axis.TIME || p.hertz(k) < ENGINE_ORDERS;
      boolean own =
          felt && engineOwn(p.hertz(k), rev, spread, 1 / span)
              || p.hertz(k) < ENGINE_ORDERS * rev && isMirrored(p, k, rev);
      power[k] = own ? 0 : p.power(k);
      best = power[k] > power[best] ? k : best;
    }
    int close = (int) Math.ceil(CLOSE / span / p.stepHertz());
    double usual = Math.max(usual(power, best, BESIDE), usual(power, best, close));
    if (power.length < FEWEST_LINES || usual <= 0 || power[best] < STANDS_OUT * usual) {
      return Optional.empty();
    }
    double amplitude = 2 * Math.sqrt(power[best] / late.size());
    double degrees = amplitude / late.gain(p.hertz(best) / rev);
    return degrees < WATCH_DEGREES
        ? Optional.empty()
        : Optional.of(new ToothHum(p.hertz(best), axis, degrees));
  }

  /**
   * Whether a line has its like on the other side of one of the engine's own: a pull that waxes and
   * wanes, as of an idle that hunts, stands in two lines beside its own, a hum in one.
   */
  private static boolean isMirrored(Periodogram p, int k, double rev) {
    double half = rev / 2;
    double other = 2 * half * Math.rint(p.hertz(k) / half) - p.hertz(k);
    int at = (int) Math.rint(other / p.stepHertz());
    double most = 0;
    for (int i = Math.max(1, at - 1); i <= at + 1 && i < p.lines(); i++) {
      most = Math.max(most, p.power(i));
    }
    return most > MIRRORED * p.power(k);
  }

  /** Mean of the periodogram around a line, by its median, which for noise is ln 2 of the mean. */
  private static double usual(double[] power, int best, int beside) {
    int from = Math.max(0, best - beside);
    int to = Math.min(power.length, best + beside + 1);
    double[] near = Arrays.stream(power, from, to).filter(p -> p > 0).sorted().toArray();
    return near.length == 0 ? 0 : near[near.length / 2] / Math.log(2);
  }

  /** Whether a frequency is a multiple of half that of the turns, as far as they are steady. */
  static boolean engineOwn(double f, double rev, double spread, double resolution) {
    if (spread > STEADY) {
      return false;
    }
    double half = rev / 2;
    double order = Math.rint(f / half);
    double away = Math.abs(f - order * half);
    return away < resolution * 1.5 + spread * f;
  }
}
