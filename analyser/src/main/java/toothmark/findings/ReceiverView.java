package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import toothmark.receiver.ReceiverTrace;

/**
 * The receiver's edges beside the decoding: which teeth it got, which it did not, and which of its
 * edges are no tooth.
 *
 * <p>A receiver that times the other edge sees every tooth the same angle away. That angle is found
 * first, so that a reversed sensor is not taken for a thousand strays.
 */
final class ReceiverView {

  /**
   * An edge further than this from its tooth, in pitches, is no tooth: teeth beside a gap are read
   * up to 0.03 pitch wrong by the overlap of their fields, bent ones are known by their own place.
   */
  private static final double REACH_PITCHES = 0.2;

  private static final int BINS = 40;

  private final double phasePitches;
  private final boolean[] got;
  private final List<Double> strays;

  private ReceiverView(double phasePitches, boolean[] got, List<Double> strays) {
    this.phasePitches = phasePitches;
    this.got = got;
    this.strays = strays;
  }

  static ReceiverView of(Turns turns, ReceiverTrace trace) {
    double phase = phase(turns, trace);
    boolean[] got = new boolean[turns.teeth()];
    List<Double> strays = new ArrayList<>();
    double[] expected = expected(turns, phase);
    int tooth = 0;
    for (int e = 0; e < trace.edges(); e++) {
      double t = trace.edgeTime(e);
      if (!turns.covers(t) || turns.teeth() == 0) {
        continue;
      }
      double angle = turns.angleAt(t);
      while (tooth + 1 < expected.length
          && Math.abs(expected[tooth + 1] - angle) <= Math.abs(expected[tooth] - angle)) {
        tooth++;
      }
      if (Math.abs(expected[tooth] - angle) <= reach(turns, phase, tooth) && !got[tooth]) {
        got[tooth] = true;
      } else {
        strays.add(t);
      }
    }
    ignoreEnds(turns, trace, got);
    return new ReceiverView(phase, got, strays);
  }

  /**
   * How far from where it is expected an edge is still that of its tooth, degrees. Where slots are
   * timed, the crossing of the gap's wide slot is nearly flat and lies anywhere in it.
   */
  private static double reach(Turns turns, double phase, int tooth) {
    int number = turns.number(tooth);
    return slots(phase) && turns.beforeGap(number)
        ? turns.spaceAfter(number) / 2
        : REACH_PITCHES * turns.pattern().pitchDegrees();
  }

  private static boolean slots(double phase) {
    return Math.abs(phase) > 0.3;
  }

  /** Where the receiver should see each tooth, unrolled degrees. */
  private static double[] expected(Turns turns, double phase) {
    double[] x = new double[turns.teeth()];
    double pitch = turns.pattern().pitchDegrees();
    for (int i = 0; i < x.length; i++) {
      double half = slots(phase) ? turns.spaceAfter(turns.number(i)) / 2 : phase * pitch;
      x[i] = turns.angle(i) + half;
    }
    return x;
  }

  /** The commonest distance of an edge after its nearest tooth, in pitches, from -0.5 to 0.5. */
  private static double phase(Turns turns, ReceiverTrace trace) {
    int[] bins = new int[BINS];
    double pitch = turns.pattern().pitchDegrees();
    for (int e = 0; e < trace.edges() && turns.teeth() > 0; e++) {
      double t = trace.edgeTime(e);
      if (turns.covers(t)) {
        double angle = turns.angleAt(t);
        double d = (angle - turns.angle(turns.toothNear(angle))) / pitch;
        if (Math.abs(d) <= 0.5) {
          bins[Math.min(BINS - 1, (int) ((d + 0.5) * BINS))]++;
        }
      }
    }
    int best = BINS / 2;
    for (int b = 0; b < BINS; b++) {
      if (pair(bins, b) > pair(bins, best)) {
        best = b;
      }
    }
    double phase = (double) best / BINS - 0.5;
    return Math.abs(phase) <= 1.5 / BINS ? 0 : phase;
  }

  /** Count on both sides of a bin's lower end, the ends joined. */
  private static int pair(int[] bins, int b) {
    return bins[b] + bins[(b + BINS - 1) % BINS];
  }

  /** Before its first edge and after its last the receiver has no say. */
  private static void ignoreEnds(Turns turns, ReceiverTrace trace, boolean[] got) {
    if (trace.edges() == 0) {
      return;
    }
    double first = trace.edgeTime(0);
    double last = trace.edgeTime(trace.edges() - 1);
    for (int i = 0; i < got.length; i++) {
      if (turns.time(i) < first || turns.time(i) > last) {
        got[i] = true;
      }
    }
  }

  /** How far after a tooth the receiver sees it, in pitches, -0.5 to 0.5. */
  double phasePitches() {
    return phasePitches;
  }

  boolean got(int tooth) {
    return got[tooth];
  }

  /** Times of edges that are no tooth, s. */
  List<Double> strays() {
    return strays;
  }
}
