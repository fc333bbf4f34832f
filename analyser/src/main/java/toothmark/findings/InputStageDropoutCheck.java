package toothmark.findings;

import java.util.List;
import java.util.stream.Stream;
import toothmark.receiver.SyncLoss;

/** Teeth that the signal shows are not taken by the receiver's input stage. */
final class InputStageDropoutCheck extends CrankCheck {

  private static final int FEWEST = 3;

  @Override
  public String id() {
    return Losses.DROPOUT;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<LostTeeth> own =
        Stream.of(Losses.DROPOUT, Losses.RANDOM)
            .flatMap(cause -> crank.losses().of(cause).stream())
            .filter(l -> l.absent() == 0 && l.rpm() >= SyncLoss.CRANKING_BELOW_RPM)
            .toList();
    if (own.size() < FEWEST) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                Severity.WATCH,
                "An input stage that follows the last tooth's height misses teeth that are there.")
            .probability(0.6)
            .saw(
                "A textbook receiver misses teeth "
                    + Words.times(own.size())
                    + " although the signal shows them, each time after the height has fallen"
                    + " from one tooth to the next.")
            .ratherThan("An opening wire takes the signal itself away; here it is there.")
            .next("Look at both sides of the controller's sensor input at one of these places.")
            .caution(Cautions.TURNING)
            .picture(Picture.WAVEFORM)
            .where(own.stream().map(LostTeeth::during).toList()));
  }
}
