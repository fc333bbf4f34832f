package toothmark.edges;

import java.util.List;

/**
 * Looks for hum of the mains over a wave, so that it can be taken away before edges are timed.
 *
 * <p>Hum moves the edges of a cranking engine by tenths of a degree. It is looked for in the flux
 * at the extrema, where the teeth themselves cancel ({@link FluxRegression}), at 50 and 60 Hz
 * within 1 %, and it must stand out from what the same record shows at frequencies beside ({@link
 * MainsLine}). Hum that drowns the teeth, or has extrema of its own between few slow ones, is
 * looked for in the voltage itself; without it the teeth must come to light, or be much more alike.
 */
final class HumFinder {

  /** Longer than this the mains may fall out of step with a sine. */
  private static final double SPAN_SECONDS = 10;

  private static final double LEAST_SECONDS = 0.2;
  private static final int LEAST_EXTREMA = 60;
  private static final int HARMONICS = 3;

  /** A sine this many standard deviations high is no chance. */
  private static final double SIGNIFICANT = 8.0;

  /** To be tried in the voltage, which the teeth fill: what they are without it is the proof. */
  private static final double WORTH_TRYING = 4.0;

  /** Teeth come to light when there are this many times more extrema than before, ... */
  private static final double MORE_EXTREMA = 1.3;

  /** ... and their swings scatter by less than this share. */
  private static final double ALIKE = 0.2;

  /** Teeth are much more alike when their swings scatter by less than this share of before. */
  private static final double MUCH_MORE_ALIKE = 1.0 / 3;

  /** A change of height by more than this share of the hum is a fit gone wild. */
  private static final double WILD = 0.5;

  private static final int ROUNDS = 2;

  private final Wave wave;
  private final Extrema extrema;

  private HumFinder(Wave wave, Extrema extrema) {
    this.wave = wave;
    this.extrema = extrema;
  }

  /** Whether extrema with a hum taken out are better than those before. */
  private interface Better {
    boolean test(Extrema before, Extrema after);
  }

  /**
   * Finds hum.
   *
   * @param wave as recorded
   * @param extrema of its flux
   * @return the hum; none where nothing stands out, or where taking it out does not make the teeth
   *     more alike
   */
  static HumTrack find(Wave wave, Extrema extrema) {
    double seconds = wave.signal().span().seconds();
    int spans = (int) Math.max(1, Math.ceil(seconds / SPAN_SECONDS));
    HumTrack none = new HumTrack(wave.signal().size() / spans + 1, spans);
    if (seconds < LEAST_SECONDS) {
      return none;
    }
    HumFinder finder = new HumFinder(wave, extrema);
    HumTrack weak = finder.settle(finder.weak(none), (b, a) -> scatter(a) <= scatter(b));
    HumTrack all = finder.strong(weak);
    return all == weak ? weak : finder.settle(all, HumFinder::bringsTeethToLight);
  }

  private static boolean bringsTeethToLight(Extrema before, Extrema after) {
    double left = scatter(after);
    return left < ALIKE
        && (after.size() > MORE_EXTREMA * before.size()
            || left < MUCH_MORE_ALIKE * scatter(before));
  }

  /** Hum that leaves the teeth as extrema of flux. */
  private HumTrack weak(HumTrack none) {
    HumTrack track = none;
    for (int i = 0; i < none.spans(); i++) {
      Extrema part = extrema.between(none.start(i), none.end(i));
      if (part.size() >= LEAST_EXTREMA) {
        FluxSteps steps = FluxSteps.of(part);
        track = track.with(i, fit(steps, MainsLine.inTeeth(steps, interval()), SIGNIFICANT));
      }
    }
    return track;
  }

  /** Hum that drowns the teeth, for spans that show none yet: of two lines the better one. */
  private HumTrack strong(HumTrack weak) {
    HumTrack one = weak;
    HumTrack other = weak;
    boolean two = false;
    for (int i = 0; i < weak.spans(); i++) {
      List<Harmonics> found = weak.span(i).isNone() ? inVoltage(weak, i) : List.of();
      if (!found.isEmpty()) {
        one = one.with(i, found.get(0));
        other = other.with(i, found.get(found.size() - 1));
        two |= found.size() > 1;
      }
    }
    return two ? better(one, other) : one;
  }

  private List<Harmonics> inVoltage(HumTrack weak, int i) {
    FluxSteps blocks = FluxSteps.ofBlocks(wave, weak.start(i), weak.end(i));
    return MainsLine.inVoltage(blocks, interval()).stream()
        .map(line -> fit(blocks, line, WORTH_TRYING))
        .filter(hum -> !hum.isNone())
        .toList();
  }

  /** Of each span the hum without which the teeth are more alike. */
  private HumTrack better(HumTrack one, HumTrack other) {
    double[] ones = scatters(one);
    double[] others = scatters(other);
    HumTrack best = one;
    for (int i = 0; i < ones.length; i++) {
      best = Double.compare(others[i], ones[i]) < 0 ? best.with(i, other.span(i)) : best;
    }
    return best;
  }

  /** How much the teeth of each span scatter without a hum, in one pass over the record. */
  private double[] scatters(HumTrack hum) {
    Extrema left = FluxEdges.find(wave.without(hum));
    double[] scatters = new double[hum.spans()];
    for (int i = 0; i < scatters.length; i++) {
      scatters[i] = scatter(left.between(hum.start(i), hum.end(i)));
    }
    return scatters;
  }

  private double interval() {
    return wave.signal().intervalSeconds();
  }

  private static Harmonics fit(FluxSteps steps, MainsLine line, double least) {
    if (!line.found()) {
      return Harmonics.none();
    }
    double frequency = line.sharpened(steps);
    FluxRegression fit = FluxRegression.of(steps, frequency, HARMONICS);
    return fit.significance(1) > least ? harmonics(fit, frequency) : Harmonics.none();
  }

  /** Extrema feel the hum a little, so what they say of it gets better as it goes. */
  private HumTrack settle(HumTrack first, Better better) {
    HumTrack hum = first;
    for (int round = 0; round < ROUNDS && !hum.isNone(); round++) {
      Extrema left = FluxEdges.find(wave.without(hum));
      for (int i = 0; i < hum.spans(); i++) {
        if (!hum.span(i).isNone()) {
          Extrema part = left.between(hum.start(i), hum.end(i));
          hum = hum.with(i, settle(hum, i, part, round == 0 ? better : (b, a) -> true));
        }
      }
    }
    return hum;
  }

  private Harmonics settle(HumTrack hum, int i, Extrema left, Better test) {
    Extrema before = extrema.between(hum.start(i), hum.end(i));
    if (left.size() < LEAST_EXTREMA || before.size() >= LEAST_EXTREMA && !test.test(before, left)) {
      return Harmonics.none();
    }
    Harmonics known = hum.span(i);
    FluxSteps steps = FluxSteps.of(left).plus(known);
    Harmonics better = fit(steps, MainsLine.near(known.cyclesPerSample(), steps), SIGNIFICANT);
    boolean wild = Math.abs(better.amplitude() / known.amplitude() - 1) > WILD;
    return wild ? Harmonics.none() : better;
  }

  private static double scatter(Extrema e) {
    return FluxSteps.of(e).scatter();
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
