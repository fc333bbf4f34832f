package toothmark.edges;

import java.util.ArrayList;
import java.util.List;

/**
 * The frequency of the mains in steps of flux, if there is one.
 *
 * @param cyclesPerSample the frequency; 0 when none stands out
 * @param step how finely it was looked for, cycles a sample
 */
record MainsLine(double cyclesPerSample, double step) {

  private static final double[] MAINS_HZ = {50, 60};
  private static final double TOLERANCE = 0.01;

  /** Between frequencies tried, in lines of the record. */
  private static final double STEP = 0.3;

  /** Where an engine, but no mains, may show a line, and where both may. */
  private static final double FROM_HZ = 24;

  private static final double TO_HZ = 131;

  /** Lines of the mains reach this far, as a share, and a little more in a short record. */
  private static final double MAINS_REACH = 0.03;

  /**
   * Hum must explain this many times more than any frequency beside: the turning of an engine gives
   * lines as well, but never one alone.
   */
  private static final double STANDS_OUT = 4.0;

  /** Twice the mains explains less than this of it; of an engine's lines it may explain more. */
  private static final double TWICE = 0.5;

  /** Share of the voltage (without its fast part) that hum explains which is worth trying. */
  private static final double STRONG_SHARE = 0.005;

  private static final MainsLine NONE = new MainsLine(0, 0);

  boolean found() {
    return cyclesPerSample > 0;
  }

  /**
   * Looks in steps from extremum to extremum; where there is no hum, a few lines beside show it.
   */
  static MainsLine inTeeth(FluxSteps steps, double intervalSeconds) {
    double ts = intervalSeconds;
    double seconds = steps.samples() * ts;
    double step = STEP / seconds;
    int lines = (int) ((TO_HZ - FROM_HZ) / step);
    double found = 0;
    double most = 0;
    for (double mains : MAINS_HZ) {
      int first = (int) Math.ceil((mains * (1 - TOLERANCE) - FROM_HZ) / step);
      int end = Math.min(lines, (int) ((mains * (1 + TOLERANCE) - FROM_HZ) / step) + 1);
      LineScan scan = new LineScan(steps, (FROM_HZ + first * step) * ts, step * ts);
      for (int k = first; k < end; k++) {
        double explained = scan.next();
        found = explained > most ? FROM_HZ + k * step : found;
        most = Math.max(most, explained);
      }
    }
    LineScan all = new LineScan(steps, FROM_HZ * ts, step * ts);
    for (int k = 0; k < lines && found > 0; k++) {
      double f = FROM_HZ + k * step;
      double reach = MAINS_REACH + 1 / (seconds * f);
      boolean beside = awayFromMains(f) > reach && Math.abs(f / found - 2) > reach;
      boolean twice = Math.abs(f / found - 2) <= TOLERANCE;
      double share = all.next() / most;
      if (beside && share > 1 / STANDS_OUT || twice && share > TWICE) {
        return NONE;
      }
    }
    return found > 0 ? new MainsLine(found * ts, step * ts) : NONE;
  }

  /** Looks in the mean voltage of blocks; teeth may show a line near one of the mains as well. */
  static List<MainsLine> inVoltage(FluxSteps blocks, double intervalSeconds) {
    double ts = intervalSeconds;
    double step = STEP / (blocks.samples() * ts);
    List<MainsLine> lines = new ArrayList<>();
    for (double mains : MAINS_HZ) {
      double from = mains * (1 - TOLERANCE);
      int count = (int) Math.ceil(2 * TOLERANCE * mains / step) + 1;
      double[] explained = new LineScan(blocks, from * ts, step * ts).explained(count);
      int best = 0;
      for (int k = 1; k < count; k++) {
        best = explained[k] > explained[best] ? k : best;
      }
      double f = (from + best * step) * ts;
      double twice = new LineScan(blocks, 2 * f, 0).explained(1)[0];
      if (explained[best] > STRONG_SHARE * blocks.squares() && twice < TWICE * explained[best]) {
        lines.add(new MainsLine(f, step * ts));
      }
    }
    return lines;
  }

  /** A frequency known nearly. */
  static MainsLine near(double cyclesPerSample, FluxSteps steps) {
    return new MainsLine(cyclesPerSample, STEP / steps.samples());
  }

  /** The frequency near by that leaves least, by parabolas ever narrower. */
  double sharpened(FluxSteps steps) {
    double at = cyclesPerSample;
    for (double by = step; by > step / 20; by /= 4) {
      double before = FluxRegression.of(steps, at - by, 1).squaresLeft();
      double middle = FluxRegression.of(steps, at, 1).squaresLeft();
      double after = FluxRegression.of(steps, at + by, 1).squaresLeft();
      double bend = before - 2 * middle + after;
      double shift = bend > 0 ? (before - after) / (2 * bend) : 0;
      at += Math.max(-1, Math.min(1, shift)) * by;
    }
    return at;
  }

  private static double awayFromMains(double f) {
    double least = 1;
    for (double mains : MAINS_HZ) {
      least = Math.min(least, Math.abs(f / mains - 1));
    }
    return least;
  }
}
