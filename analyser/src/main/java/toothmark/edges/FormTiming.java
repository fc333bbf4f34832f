package toothmark.edges;

import java.util.stream.IntStream;

/**
 * Moves each passing to where the form of its own tooth, seen over several turns, lies best.
 *
 * <p>The fit to a single passing knows nothing of the wave but that it is smooth, and so uses its
 * steep part alone; {@link ToothForm} uses all of it. Passings of one tooth are found by {@link
 * Repeats}, so that nothing need be known of the wheel. One form serves up to 32 turns in which the
 * speed changes by no more than a quarter, since the lag of a coil and the reach of a filter change
 * with it. A passing that the form does not place better, by both their uncertainties, stays.
 */
final class FormTiming {

  private static final int BUFFER = 1 << 17;
  private static final int SHARES = 2;

  /** The form reaches this much farther than the fit to a single passing ... */
  private static final double REACH = 2.1;

  /** ... and no farther than half way to the next of its kind; points are loaded for a bit more. */
  private static final double SPARE = 1.02;

  private static final double MOST_CHANGE = 1.25;
  private static final int FEWEST = 2;
  private static final double FEWEST_SAMPLES = 3;

  /** Speed is taken over a twelfth of a turn to either side. */
  private static final int TWELFTHS = 12;

  /** The form's zero lies this far off the single ones at most, in their standard deviations. */
  private static final double AGREES = 3;

  /** What a spline of a few intervals itself leaves of a tooth, half windows. */
  private static final double SMALLEST = 1e-5;

  private final Wave wave;
  private final Passings passings;
  private final Repeats repeats;
  private final double[] single;
  private final SampleWindow window;
  private final FormSpline form = new FormSpline();
  private final Tooth[] teeth;

  private FormTiming(Wave wave, Passings passings, Repeats repeats, double[] single) {
    this.wave = wave;
    this.passings = passings;
    this.repeats = repeats;
    this.single = single;
    window = new SampleWindow(wave.signal(), BUFFER);
    teeth = new Tooth[repeats.lag];
  }

  /** Makes the passings' positions and uncertainties better where turns repeat. */
  static void refine(Wave wave, Passings passings) {
    // What is cut off at a level changes its form with the speed.
    if (Double.isInfinite(wave.limit())) {
      Repeats repeats = new Repeats(passings.position);
      double[] single = passings.position.clone();
      // Teeth are nothing to each other: every other one goes to another thread.
      IntStream.range(0, SHARES)
          .parallel()
          .forEach(k -> new FormTiming(wave, passings, repeats, single).run(k));
    }
  }

  /** Passings of one tooth or slot that share a form. */
  private final class Tooth {
    private final ToothForm turns = new ToothForm(form);
    private int first;
    private int count;
    private int base;
    private double left;
    private double right;
    private double growth;
    private double half;
    private int spacing;

    /** Takes the next passing, which each comes a lag after the last. */
    void pass(int i) {
      if (count == 0) {
        start(i);
      }
      if (count > 0) {
        add(i);
        if (turns.size() == count) {
          finish();
          count = 0;
        }
      }
    }

    /** Looks how far the turns from here belong together, and whether they are enough. */
    private void start(int i) {
      first = i;
      int linked = linked(i);
      boolean two = linked > ToothForm.MOST && linked < 2 * ToothForm.MOST;
      count = two ? linked / 2 : Math.min(linked, ToothForm.MOST);
      turns.clear();
      if (count < FEWEST || !measure()) {
        count = 0;
      }
    }

    private int passing(int turn) {
      return first + turn * repeats.lag;
    }

    private int linked(int i) {
      double least = Double.POSITIVE_INFINITY;
      double most = 0;
      int n = 0;
      for (int at = i; at + 2 < single.length && n < 2 * ToothForm.MOST; at += repeats.lag) {
        double span = single[at + 2] - single[at - 2];
        least = Math.min(least, span);
        most = Math.max(most, span);
        if (most > MOST_CHANGE * least) {
          break;
        }
        n++;
        if (!repeats.comesAgain(at)) {
          break;
        }
      }
      return n;
    }

    private boolean measure() {
      base = Math.max(1, repeats.lag / (2 * TWELFTHS));
      while (base > 1 && (first < 2 * base || passing(count - 1) + 2 * base >= single.length)) {
        base--;
      }
      double near = 0;
      double far = 0;
      double reach = 0;
      int sound = 0;
      growth = 0;
      left = 0;
      right = 0;
      for (int k = 0; k < count; k++) {
        int i = passing(k);
        left += before(i) / count;
        right += after(i) / count;
        growth += growth(i) / count;
        near += (single[i] - single[i - 2]) / count;
        far += (single[i + 2] - single[i]) / count;
        reach += passings.reach[i];
        sound += passings.reach[i] > 0 ? 1 : 0;
      }
      half = Math.min(Math.min(near, far) / 2, REACH * reach / Math.max(1, sound));
      spacing = (int) Math.ceil(2 * half * SPARE * MOST_CHANGE / ToothForm.MOST_POINTS);
      return sound >= FEWEST && half >= FEWEST_SAMPLES && 4 * half < BUFFER;
    }

    private double before(int i) {
      return single[i] - single[i - 2 * base];
    }

    private double after(int i) {
      return single[i + 2 * base] - single[i];
    }

    /** Half the change of speed in a sample: angle is a parabola through the passings around. */
    private double change(int i) {
      return (right / after(i) - left / before(i)) / (before(i) + after(i));
    }

    /** Logarithm of the swings of flux after a passing over those before. */
    private double growth(int i) {
      double before = 0;
      double after = 0;
      for (int k = 0; k < 2 * base; k++) {
        before += passings.swing[i - 1 - k];
        after += passings.swing[i + k];
      }
      return Math.log(after / before);
    }

    /** Speed at a passing over that of the form. */
    private double speed(int i) {
      return left / before(i) + change(i) * before(i);
    }

    private void add(int i) {
      double speed = speed(i);
      double perSample = speed / half;
      int points = (int) Math.min(ToothForm.MOST_POINTS, 2 * SPARE / (perSample * spacing)) | 1;
      long from = Math.round(single[i] - 0.5 * points * spacing + 0.5);
      if (passings.reach[i] == 0
          || from < 0
          || from + (long) points * spacing > wave.signal().size()) {
        points = 0;
      }
      double middleOfFirst = from + 0.5 * (spacing - 1) - single[i];
      double[] y =
          turns.add(
              points,
              middleOfFirst * perSample,
              spacing * perSample,
              speed,
              change(i) / perSample / speed,
              (growth(i) - growth) * 2 / (before(i) + after(i)) / perSample);
      load(y, from, points, passings.offset[i]);
    }

    private void load(double[] y, long from, int points, double offset) {
      if (points > 0) {
        window.hold(from, from + (long) points * spacing);
      }
      for (int k = 0; k < points; k++) {
        double sum = 0;
        long at = from + (long) k * spacing;
        for (int j = 0; j < spacing; j++) {
          sum += wave.push(window.at(at + j));
        }
        y[k] = sum / spacing - offset;
      }
    }

    /** Lays the form and moves the passings. */
    private void finish() {
      int n = turns.fit();
      if (n < FEWEST) {
        return;
      }
      double noise = turns.noise();
      FormZero zero = new FormZero(form, noise, turns.points());
      if (!agrees(zero.zero, n)) {
        return;
      }
      // Points between the samples repeat the samples' noise.
      double shared = Math.max(1, wave.oversampling() / (double) spacing);
      for (int k = 0; k < count; k++) {
        double own = turns.variance(k, noise) * (n - 1) / n;
        double v = shared * (own + zero.variance) + SMALLEST * SMALLEST;
        move(passing(k), turns.delay[k] + zero.zero, Math.sqrt(v));
      }
    }

    private boolean agrees(double zero, int n) {
      double off = 0;
      double squares = 0;
      for (int k = 0; k < count; k++) {
        if (turns.fits(k)) {
          double moved = turns.delay[k] + zero;
          double u = passings.uncertainty[passing(k)] / half;
          off += moved;
          squares += turns.delay[k] * turns.delay[k] + u * u;
        }
      }
      return Math.abs(off) / n <= AGREES * Math.sqrt(squares / n);
    }

    private void move(int i, double by, double uncertainty) {
      double samples = half / speed(i);
      if (passings.reach[i] > 0 && uncertainty * samples < passings.uncertainty[i]) {
        passings.position[i] = single[i] + by * samples;
        passings.uncertainty[i] = uncertainty * samples;
      }
    }
  }

  private void run(int share) {
    for (int i = 2; i + 2 < single.length && teeth.length > 0; i++) {
      int slot = i % teeth.length;
      if (slot % SHARES != share) {
        continue;
      }
      if (teeth[slot] == null) {
        teeth[slot] = new Tooth();
      }
      teeth[slot].pass(i);
    }
  }
}
