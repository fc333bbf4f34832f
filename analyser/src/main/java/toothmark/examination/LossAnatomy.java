package toothmark.examination;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import toothmark.receiver.ReceiverTrace;
import toothmark.receiver.SyncLoss;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * What happened to the signal where the reference receiver lost its count.
 *
 * <p>Its follower judges from three edges, so all that can have misled it lies between the edge at
 * which it noticed and the second one before.
 *
 * @param loss where it noticed
 * @param tooth our number of the last tooth up to there
 * @param strays edges it took that are no teeth
 * @param unheard teeth that gave an edge which its circuit did not take
 * @param silent teeth that gave no edge
 * @param cause a finding's id; empty where nothing explains the loss
 */
public record LossAnatomy(
    SyncLoss loss,
    OptionalInt tooth,
    int strays,
    List<Integer> unheard,
    List<Integer> silent,
    String cause) {

  /** Edges from which the follower takes one ratio. */
  private static final int EDGES = 3;

  /** An edge this near to a tooth, as a share of the distance to its neighbour, is that tooth's. */
  private static final double NEAR = 0.3;

  /** Copies the lists. */
  public LossAnatomy {
    unheard = List.copyOf(unheard);
    silent = List.copyOf(silent);
  }

  /**
   * All losses of an examination.
   *
   * @param e the examination
   * @return in time order; empty where no teeth were found
   */
  public static List<LossAnatomy> of(Examination e) {
    List<SyncLoss> losses = e.observations().receiver().losses();
    List<String> causes = e.diagnosis().syncLossCauses();
    Optional<ToothEvents> teeth = e.teeth();
    List<LossAnatomy> all = new ArrayList<>();
    for (int i = 0; i < losses.size() && teeth.isPresent(); i++) {
      String cause = i < causes.size() ? causes.get(i) : "";
      all.add(of(losses.get(i), e.observations().receiver(), teeth.get(), cause));
    }
    return all;
  }

  private static LossAnatomy of(
      SyncLoss loss, ReceiverTrace receiver, ToothEvents teeth, String cause) {
    int at = edgeAt(receiver, loss.timeSeconds());
    double begin = receiver.edgeTime(Math.max(0, at - EDGES + 1));
    OptionalInt tooth = OptionalInt.empty();
    int strays = 0;
    List<Integer> unheard = new ArrayList<>();
    List<Integer> silent = new ArrayList<>();
    int last = lastUpTo(teeth, loss.timeSeconds());
    for (int k = last; k >= 0 && teeth.time(k) >= begin; k--) {
      boolean heard = isHeard(receiver, at, teeth, k);
      switch (teeth.kind(k)) {
        case STRAY -> strays += heard ? 1 : 0;
        case MISSING -> silent.add(0, teeth.tooth(k));
        case SEEN -> {
          if (!heard) {
            unheard.add(0, teeth.tooth(k));
          }
        }
      }
    }
    for (int k = last; k >= 0 && tooth.isEmpty(); k--) {
      tooth = teeth.kind(k) == ToothKind.STRAY ? tooth : OptionalInt.of(teeth.tooth(k));
    }
    return new LossAnatomy(loss, tooth, strays, unheard, silent, cause);
  }

  private static int edgeAt(ReceiverTrace receiver, double time) {
    int low = 0;
    int high = receiver.edges() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (receiver.edgeTime(middle) <= time) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /** The last event up to a little after a time, since an edge and its tooth are not quite one. */
  private static int lastUpTo(ToothEvents teeth, double time) {
    int low = 0;
    int high = teeth.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (teeth.time(middle) <= time) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    boolean next = low + 1 < teeth.size() && teeth.time(low + 1) - time < reach(teeth, low + 1);
    return next ? low + 1 : low;
  }

  private static boolean isHeard(ReceiverTrace receiver, int at, ToothEvents teeth, int k) {
    double reach = reach(teeth, k);
    for (int i = Math.max(0, at - EDGES); i <= at; i++) {
      if (Math.abs(receiver.edgeTime(i) - teeth.time(k)) <= reach) {
        return true;
      }
    }
    return false;
  }

  private static double reach(ToothEvents teeth, int k) {
    double before = k > 0 ? teeth.time(k) - teeth.time(k - 1) : Double.POSITIVE_INFINITY;
    double after =
        k + 1 < teeth.size() ? teeth.time(k + 1) - teeth.time(k) : Double.POSITIVE_INFINITY;
    return NEAR * Math.min(before, after);
  }
}
