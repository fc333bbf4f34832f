package toothmark.wheel;

import java.util.Arrays;

/**
 * Edges counted in slots before a wheel is known: each edge's place in units of the common step, or
 * none for a stray; and the strays that stand half way between two slots.
 */
final class SlotCount {

  private static final double HALF_WAY = 0.17;

  /** Slot of each counted edge, from 0, rising. */
  final int[] slots;

  /** Slots that are followed, half a step later, by an edge of their own. */
  final int[] halfSlots;

  /** Places in {@link #slots} where the count was taken up anew. */
  final boolean[] fresh;

  private SlotCount(int[] slots, boolean[] fresh, int[] halfSlots) {
    this.slots = slots;
    this.fresh = fresh;
    this.halfSlots = halfSlots;
  }

  static SlotCount of(EdgeSeries edges, Labelling labels) {
    int n = labels.count();
    int[] slots = new int[n];
    boolean[] fresh = new boolean[n];
    int[] half = new int[labels.size()];
    int halves = 0;
    int k = 0;
    int slot = 0;
    int last = -1;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] == Labelling.STRAY) {
        continue;
      }
      int step = labels.steps[i];
      fresh[k] = step == 0;
      slot += Math.max(1, step);
      if (last >= 0 && step > 0) {
        for (int j = last + 1; j < i; j++) {
          double place = step * share(edges, labels.from, last, j, i);
          double part = place - Math.floor(place);
          if (Math.abs(part - 0.5) < HALF_WAY) {
            half[halves++] = slot - step + (int) Math.floor(place);
          }
        }
      }
      slots[k++] = slot;
      last = i;
    }
    return new SlotCount(slots, fresh, Arrays.copyOf(half, halves));
  }

  private static double share(EdgeSeries edges, int from, int before, int at, int after) {
    double[] t = edges.times;
    return (t[from + at] - t[from + before]) / (t[from + after] - t[from + before]);
  }

  /** Slots from first to last. */
  int span() {
    return slots.length == 0 ? 0 : slots[slots.length - 1] - slots[0] + 1;
  }
}
