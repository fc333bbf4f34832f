package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import toothmark.receiver.SyncLoss;
import toothmark.wheel.Orientation;
import toothmark.wheel.WheelPattern;

/**
 * Which finding explains each sync loss of the receiver.
 *
 * <p>A wrong wheel or a reversed sensor explains all of them. Otherwise a loss is put down to what
 * disturbed the signal last before it, within the turn: the follower judges from three edges, so
 * the nearest disturbance is the one that misled it.
 */
final class SyncCauses {

  /** A disturbance may be dated this much after the edge at which its loss shows, in pitches. */
  private static final double AFTER_PITCHES = 0.6;

  private SyncCauses() {}

  /** In the order of the losses; empty text where nothing explains one. */
  static List<String> of(Observations seen, CrankSymptoms crank) {
    List<String> causes = new ArrayList<>();
    String[] strays = crank.strays().causes();
    String[] losses = resolved(crank, strays);
    for (SyncLoss loss : seen.receiver().losses()) {
      causes.add(cause(seen, crank, loss, strays, losses));
    }
    return causes;
  }

  /** What each run of lost teeth is put down to, those hidden by a stray to the stray's cause. */
  private static String[] resolved(CrankSymptoms crank, String[] strays) {
    String[] c = crank.losses().causes();
    for (int i = 0; i < c.length; i++) {
      LostTeeth l = crank.losses().events().get(i);
      if (c[i].equals(Losses.HIDDEN)) {
        c[i] = l.stray().isPresent() ? strays[l.stray().getAsInt()] : Losses.RANDOM;
      }
    }
    return c;
  }

  private static String cause(
      Observations seen, CrankSymptoms crank, SyncLoss loss, String[] strays, String[] losses) {
    if (otherWheel(seen, crank)) {
      return "wheel-pattern-mismatch";
    }
    if (crank.turns().crank().identification().orientation() == Orientation.REVERSED) {
      return "sensor-polarity-reversed";
    }
    Turns turns = crank.turns();
    if (isOfSilence(loss, crank)) {
      return Losses.OPEN;
    }
    if (!turns.covers(loss.timeSeconds())) {
      return cranking(loss);
    }
    double pitch = turns.pitchSeconds(loss.timeSeconds());
    double latest = loss.timeSeconds() + AFTER_PITCHES * pitch;
    double earliest = loss.timeSeconds() - turns.pattern().slots() * pitch;
    String best = "";
    double at = earliest;
    for (int i = 0; i < strays.length; i++) {
      double t = crank.strays().events().get(i).timeSeconds();
      if (t <= latest && t > at) {
        at = t;
        best = strays[i];
      }
    }
    for (int i = 0; i < losses.length; i++) {
      LostTeeth l = crank.losses().events().get(i);
      double t = Math.min(l.during().endExclusive(), latest);
      if (l.during().startInclusive() <= latest && t > at) {
        at = t;
        best = losses[i];
      }
    }
    return best.isEmpty() ? cranking(loss) : best;
  }

  /** A silence loses sync, and again in the turn in which the teeth come back. */
  private static boolean isOfSilence(SyncLoss loss, CrankSymptoms crank) {
    double t = loss.timeSeconds();
    return crank.losses().silences().stream()
        .anyMatch(
            s -> {
              double turn =
                  crank.turns().pattern().slots() * crank.turns().pitchSeconds(s.endExclusive());
              return t >= s.startInclusive() && t <= s.endExclusive() + turn;
            });
  }

  private static String cranking(SyncLoss loss) {
    return loss.phase() == SyncLoss.Phase.CRANKING ? CrankingLossesCheck.ID : "";
  }

  private static boolean otherWheel(Observations seen, CrankSymptoms crank) {
    WheelPattern found = crank.turns().crank().identification().pattern();
    return seen.stated()
        .pattern()
        .filter(told -> !told.toString().equals(found.toString()))
        .isPresent();
  }
}
