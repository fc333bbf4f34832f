package toothmark.edges;

import java.util.Arrays;

/**
 * Edges of a two-level signal in turn, and which of them are flicker.
 *
 * <p>A pulse shorter than 0.15 of the rolling median of its own level is flicker: its two edges
 * stay in the trains, with the share as their strength, and the pulses beside it count as one. The
 * shortest go first, since taking one away lengthens its neighbours.
 */
final class PulseTrain implements LevelCrossings.Sink {

  private static final double FLICKER = 0.15;
  private static final int SAME_LEVEL_EACH_SIDE = 8;
  private static final int ROUNDS = 3;

  private int size;
  private double[] times = new double[256];
  private double[] uncertainties = new double[256];
  private double[] strengths;
  private EdgeDirection first;

  @Override
  public void crossing(EdgeDirection direction, double time, double uncertainty) {
    if (size == 0) {
      first = direction;
    } else if (direction != direction(size)) {
      throw new IllegalStateException("edges of a two-level signal must come in turn");
    }
    if (size == times.length) {
      times = Arrays.copyOf(times, size * 2);
      uncertainties = Arrays.copyOf(uncertainties, size * 2);
    }
    times[size] = time;
    uncertainties[size] = uncertainty;
    size++;
  }

  private EdgeDirection direction(int i) {
    return i % 2 == 0 ? first : first.opposite();
  }

  /** Weighs the edges and parts them by direction. */
  CrankEdges edges(SensorKind kind, java.util.function.Function<EdgeTrain, SignalQuality> quality) {
    weigh();
    EdgeList falling = new EdgeList();
    EdgeList rising = new EdgeList();
    for (int i = 0; i < size; i++) {
      boolean fall = direction(i) == EdgeDirection.FALLING;
      (fall ? falling : rising).add(times[i], uncertainties[i], strengths[i], fall ? 0 : 1);
    }
    EdgeTrain down = falling.train();
    return new CrankEdges(kind, down, rising.train(), quality.apply(down));
  }

  private void weigh() {
    strengths = new double[size];
    int[] live = new int[size];
    for (int i = 0; i < size; i++) {
      live[i] = i;
    }
    for (int round = 0; round < ROUNDS; round++) {
      int before = live.length;
      live = withoutFlicker(live);
      if (live.length == before) {
        break;
      }
    }
    double[] usual = usualWidths(live);
    for (int k = 0; k < live.length; k++) {
      double s = 1;
      if (k > 0) {
        s = Math.min(s, width(live, k - 1) / usual[k - 1]);
      }
      if (k + 1 < live.length) {
        s = Math.min(s, width(live, k) / usual[k]);
      }
      strengths[live[k]] = s;
    }
  }

  private double width(int[] live, int k) {
    return times[live[k + 1]] - times[live[k]];
  }

  private int[] withoutFlicker(int[] live) {
    double[] usual = usualWidths(live);
    int n = Math.max(0, live.length - 1);
    Integer[] order = new Integer[n];
    int candidates = 0;
    for (int k = 0; k < n; k++) {
      if (width(live, k) < FLICKER * usual[k]) {
        order[candidates++] = k;
      }
    }
    Arrays.sort(order, 0, candidates, (a, b) -> Double.compare(width(live, a), width(live, b)));
    boolean[] gone = new boolean[live.length];
    for (int c = 0; c < candidates; c++) {
      int k = order[c];
      if (!gone[k] && !gone[k + 1]) {
        gone[k] = true;
        gone[k + 1] = true;
        strengths[live[k]] = width(live, k) / usual[k];
        strengths[live[k + 1]] = strengths[live[k]];
      }
    }
    int[] kept = new int[live.length];
    int m = 0;
    for (int k = 0; k < live.length; k++) {
      if (!gone[k]) {
        kept[m++] = live[k];
      }
    }
    return Arrays.copyOf(kept, m);
  }

  /** Rolling median of the width of pulses of the same level. */
  private double[] usualWidths(int[] live) {
    int n = Math.max(0, live.length - 1);
    double[] usual = new double[n];
    double[] near = new double[2 * SAME_LEVEL_EACH_SIDE + 1];
    for (int k = 0; k < n; k++) {
      int m = 0;
      for (int d = -SAME_LEVEL_EACH_SIDE; d <= SAME_LEVEL_EACH_SIDE; d++) {
        int j = k + 2 * d;
        if (j >= 0 && j < n) {
          near[m++] = width(live, j);
        }
      }
      Arrays.sort(near, 0, m);
      usual[k] = near[m / 2];
    }
    return usual;
  }
}
