package toothmark.findings;

import toothmark.units.Fourier;

/**
 * How strongly values at uneven times keep step with each frequency.
 *
 * <p>The values are laid on an even grid fine enough for the highest frequency asked for (four
 * points a half cycle, which weakens a line there by 2.6 %), and the grid is transformed; compare
 * Press and Rybicki, Astrophys. J. 338 (1989) 277-280. The power at a frequency is the square of
 * the length of the sum of v exp(-i 2 pi f t), over the number of values: for values of 1 it is
 * Rayleigh's statistic.
 */
final class Periodogram {

  private static final int POINTS_A_HALF_CYCLE = 4;
  private static final int MOST_POINTS = 1 << 20;

  private final double[] transform;
  private final double step;
  private final int lines;
  private final int values;

  private Periodogram(double[] transform, double step, int lines, int values) {
    this.transform = transform;
    this.step = step;
    this.lines = lines;
    this.values = values;
  }

  /**
   * Transforms values.
   *
   * @param times rising, s; at least two
   * @param values as many
   * @param highestHertz highest frequency of interest; lowered where the record is too long for it
   */
  static Periodogram of(double[] times, double[] values, double highestHertz) {
    double span = times[times.length - 1] - times[0];
    double points = 2 * span * highestHertz * POINTS_A_HALF_CYCLE;
    int size = 1 << 10;
    while (size < 4 * points && size < MOST_POINTS) {
      size *= 2;
    }
    double interval = Math.max(4 * span / size, 1 / (2 * highestHertz * POINTS_A_HALF_CYCLE));
    double[] grid = new double[size];
    for (int i = 0; i < times.length; i++) {
      int at = (int) Math.round((times[i] - times[0]) / interval);
      grid[Math.min(size - 1, at)] += values[i];
    }
    Fourier.forward(grid);
    double step = 1 / (size * interval);
    double highest = Math.min(highestHertz, 1 / (2 * interval * POINTS_A_HALF_CYCLE));
    int lines = (int) Math.min(size / 2 - 1, highest / step);
    return new Periodogram(grid, step, lines, times.length);
  }

  /** How many frequencies there are, from 0 up. */
  int lines() {
    return lines;
  }

  /** From one frequency to the next, Hz. */
  double stepHertz() {
    return step;
  }

  double hertz(int line) {
    return line * step;
  }

  double power(int line) {
    double re = transform[2 * line];
    double im = line == 0 ? 0 : transform[2 * line + 1];
    return (re * re + im * im) / values;
  }
}
