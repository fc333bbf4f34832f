package toothmark.examination;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Signal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.CrankEdges;
import toothmark.edges.LogicEdges;
import toothmark.edges.SignalShape;
import toothmark.ignition.PickUp;

/**
 * What the channels beside the crank's look like, gone through once for all who ask, while the
 * crank is worked on.
 */
final class FirstLooks {

  /** A channel's survey, and its edges as of one that switches. */
  static final class Look {

    private final Signal signal;
    private final ChannelSurvey survey;
    private final Optional<CrankEdges> edges;

    Look(Signal signal) {
      this.signal = signal;
      this.survey = ChannelSurvey.of(signal);
      this.edges = switches() ? Optional.of(LogicEdges.detect(signal, survey)) : Optional.empty();
    }

    ChannelSurvey survey() {
      return survey;
    }

    /** Whether it looks like one that switches. */
    boolean switches() {
      return survey.shape() == SignalShape.TWO_LEVEL || survey.shape() == SignalShape.PULSE_TRAIN;
    }

    /** Both directions. */
    CrankEdges edges() {
      return edges.orElseGet(() -> LogicEdges.detect(signal, survey));
    }
  }

  private final CompletableFuture<Map<Channel, Look>> looks;

  private FirstLooks(CompletableFuture<Map<Channel, Look>> looks) {
    this.looks = looks;
  }

  /** Starts to look, on a thread of its own. */
  static FirstLooks start(Capture capture, JobSheet sheet, Channel crank) {
    List<Channel> channels =
        capture.channels().stream().filter(c -> c != crank && mayBeAsked(c, sheet)).toList();
    return new FirstLooks(
        CompletableFuture.supplyAsync(
            () -> {
              Map<Channel, Look> seen = new IdentityHashMap<>();
              channels.forEach(c -> seen.put(c, new Look(c.signal())));
              return seen;
            }));
  }

  private static boolean mayBeAsked(Channel channel, JobSheet sheet) {
    boolean marks = sheet.channels().tdc().filter(channel.name()::equals).isPresent();
    return !IgnitionChannels.areStated(sheet)
        || marks
        || sheet.coils().stream()
            .filter(c -> c.coil().pickUp() == PickUp.LOGIC)
            .anyMatch(c -> c.channel().equals(channel.name()));
  }

  /** The look at a channel; waits for it where it is still under way. */
  Look at(Channel channel) {
    Look look = looks.join().get(channel);
    return look == null ? new Look(channel.signal()) : look;
  }
}
