package toothmark.findings;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import toothmark.edges.EdgeTrain;
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
 * @param resonance a frequency at which teeth swing about their places at any speed
 * @param swings strength of the signal; empty for one without flux
 */
record CrankSymptoms(
    Turns turns,
    ReceiverView receiver,
    Strays strays,
    Losses losses,
    Optional<RimForm> rim,
    Optional<ToothHum> hum,
    Optional<Resonance> resonance,
    Optional<ToothSwings> swings) {

  /** Ripple falls with the square of speed: at this ratio to less than half. */
  private static final double SEVERAL = 1.5;

  /** Slower than this a wheel is as good as still. */
  private static final double STILL_RPM = 150;

  static CrankSymptoms of(Turns turns, Observations seen) {
    EdgeTrain train = seen.edges().train(turns.crank().identification().toothEdge());
    ToothLateness late = ToothLateness.of(turns);
    CompletableFuture<Optional<ToothHum>> hum =
        CompletableFuture.supplyAsync(() -> ToothHum.of(turns, late));
    CompletableFuture<Optional<Resonance>> resonance =
        CompletableFuture.supplyAsync(() -> Resonance.of(turns, late, train));
    ReceiverView receiver = ReceiverView.of(turns, seen.receiver());
    Strays strays = Strays.of(turns, receiver, seen);
    Losses losses = Losses.of(turns, receiver, strays, seen);
    Optional<ToothSwings> swings = ToothSwings.of(turns, train);
    Optional<RimForm> rim = RimForm.of(turns.pattern(), turns.crank().wheel().geometry(), swings);
    return new CrankSymptoms(
        turns, receiver, strays, losses, rim, hum.join(), resonance.join(), swings);
  }

  /** Whether running speeds differ enough that the wheel's errors part from the engine's ripple. */
  boolean severalSpeeds() {
    double[] rpm = new double[turns.teeth()];
    int n = 0;
    for (int i = 0; i < rpm.length; i++) {
      double at = turns.rpmAt(turns.time(i));
      if (at >= SyncLoss.CRANKING_BELOW_RPM) {
        rpm[n++] = at;
      }
    }
    double[] running = Arrays.copyOf(rpm, n);
    Arrays.sort(running);
    return n > 0 && running[n * 9 / 10] > SEVERAL * running[n / 10];
  }

  /** Whether a receiver misses teeth just behind any of some strays. */
  boolean hides(List<Stray> some) {
    Set<Stray> set = new HashSet<>(some);
    return losses.of(Losses.HIDDEN).stream()
        .anyMatch(l -> set.contains(strays.events().get(l.stray().orElseThrow())));
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
