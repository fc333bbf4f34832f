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
        Draft.of(id(), Severity.WATCH)
            .probability(0.6)
            .saw("missed", Words.times(own.size()))
            .ratherThan("open-wire")
            .caution("turning")
            .picture(Picture.WAVEFORM)
            .where(own.stream().map(LostTeeth::during).toList()));
  }
}
