package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.receiver.SyncLoss;

/**
 * What shows at the teeth.
 *
 * @param turns the decoding
 * @param receiver what the receiver got of it
 * @param strays edges that are no tooth, by cause
 * @param losses teeth that gave no edge, by cause
 * @param rim form of the wheel; empty when too few turns were learned from
 * @param hum a steady line in the times of the teeth
 */
record CrankSymptoms(
    Turns turns,
    ReceiverView receiver,
    Strays strays,
    Losses losses,
    Optional<RimForm> rim,
    Optional<Hum> hum) {

  /** Slower than this a wheel is as good as still. */
  private static final double STILL_RPM = 150;

  static CrankSymptoms of(Turns turns, Observations seen) {
    ReceiverView receiver = ReceiverView.of(turns, seen.receiver());
    Strays strays = Strays.of(turns, receiver, seen);
    Losses losses = Losses.of(turns, receiver, strays.events());
    Optional<RimForm> rim = RimForm.of(turns.pattern(), turns.crank().wheel().geometry());
    return new CrankSymptoms(turns, receiver, strays, losses, rim, Hum.of(turns));
  }

  /** Whether a receiver misses teeth just behind any of some strays. */
  boolean hides(List<Stray> some) {
    return losses.of(Losses.HIDDEN).stream()
        .anyMatch(l -> some.contains(strays.events().get(l.stray().orElseThrow())));
  }

  /** Whether the engine ran and came to rest well before the record ends. */
  boolean stalls(Observations seen) {
    if (turns.teeth() < 2) {
      return false;
    }
    double last = turns.time(turns.teeth() - 1);
    double rest = seen.capture().span().endExclusive() - last;
    return turns.crank().speed().maxRpm() > SyncLoss.CRANKING_BELOW_RPM
        && turns.rpmAt(last) < STILL_RPM
        && rest > 3 * turns.pitchSeconds(last);
  }
}
