package toothmark.examination;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import toothmark.receiver.ReceiverTrace;
import toothmark.rotation.DecodedCrank;
import toothmark.units.CrankAngle;
import toothmark.wheel.ToothEvent;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * Adds to a decoding the edges that the reference receiver took for teeth and that are none.
 *
 * <p>A receiver edge belongs to the nearest tooth seen, and to no other edge; an edge further than
 * {@value #REACH} of a pitch from any tooth, or further than another edge from the same tooth, is a
 * stray.
 */
final class ReceiverStrays {

  private static final double REACH = 0.4;

  private ReceiverStrays() {}

  static ToothEvents merge(DecodedCrank crank, ReceiverTrace receiver) {
    ToothEvents decoded = crank.wheel().events();
    int[] seen = indicesOf(decoded, ToothKind.SEEN);
    int[] strays = indicesOf(decoded, ToothKind.STRAY);
    double[] nearest = new double[seen.length];
    int[] owner = new int[receiver.edges()];
    Arrays.fill(nearest, Double.POSITIVE_INFINITY);
    for (int e = 0; e < owner.length; e++) {
      owner[e] = nearest(decoded, seen, receiver.edgeTime(e));
      if (owner[e] >= 0) {
        double d = Math.abs(decoded.time(seen[owner[e]]) - receiver.edgeTime(e));
        nearest[owner[e]] = Math.min(nearest[owner[e]], d);
      }
    }
    List<ToothEvent> added = new ArrayList<>();
    for (int e = 0; e < owner.length; e++) {
      double t = receiver.edgeTime(e);
      if (owner[e] >= 0 && crank.angle().covers(t)) {
        double pitch = pitchSeconds(crank, t);
        double off = Math.abs(decoded.time(seen[owner[e]]) - t);
        boolean known = near(decoded, strays, t, REACH * pitch);
        if (!known && (off > REACH * pitch || off > nearest[owner[e]])) {
          added.add(stray(decoded, seen[owner[e]], t));
        }
      }
    }
    return merged(decoded, added);
  }

  private static double pitchSeconds(DecodedCrank crank, double time) {
    return crank.wheel().pattern().pitchDegrees() / CrankAngle.turned(crank.angle().rpmAt(time), 1);
  }

  private static boolean near(ToothEvents events, int[] at, double time, double within) {
    int i = nearest(events, at, time);
    return i >= 0 && Math.abs(events.time(at[i]) - time) < within;
  }

  private static ToothEvent stray(ToothEvents decoded, int besides, double time) {
    return new ToothEvent(time, 0, ToothKind.STRAY, 0, decoded.revolution(besides), 1, 0);
  }

  private static int[] indicesOf(ToothEvents events, ToothKind kind) {
    int[] found = new int[events.count(kind)];
    int n = 0;
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) == kind) {
        found[n++] = i;
      }
    }
    return found;
  }

  /** Which of some events is nearest to an instant, by bisection; -1 when there are none. */
  private static int nearest(ToothEvents events, int[] at, double time) {
    int low = 0;
    int high = at.length - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (events.time(at[middle]) < time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    boolean before =
        low > 0
            && low < at.length
            && time - events.time(at[low - 1]) < Math.abs(events.time(at[low]) - time);
    return at.length == 0 ? -1 : before ? low - 1 : low;
  }

  private static ToothEvents merged(ToothEvents decoded, List<ToothEvent> added) {
    ToothEvents.Builder all = new ToothEvents.Builder();
    int next = 0;
    for (int i = 0; i < decoded.size(); i++) {
      while (next < added.size() && added.get(next).timeSeconds() <= decoded.time(i)) {
        all.add(added.get(next++));
      }
      all.add(decoded.event(i));
    }
    while (next < added.size()) {
      all.add(added.get(next++));
    }
    return all.build();
  }
}
