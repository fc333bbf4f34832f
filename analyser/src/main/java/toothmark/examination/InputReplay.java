package toothmark.examination;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import toothmark.capture.Channel;
import toothmark.capture.SampledSignal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.SensorKind;
import toothmark.findings.Observations;
import toothmark.receiver.Conditioner;
import toothmark.receiver.ConditionerReplay;
import toothmark.receiver.FollowedWheel;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelPattern;

/** Plays the crank signal of an examined capture to other input circuits than the reference. */
public final class InputReplay {

  private final ConditionerReplay replay;
  private final FollowedWheel wheel;
  private final double[] toothTimes;

  private InputReplay(ConditionerReplay replay, FollowedWheel wheel, double[] toothTimes) {
    this.replay = replay;
    this.wheel = wheel;
    this.toothTimes = toothTimes;
  }

  /**
   * Prepares a replay; goes through the signal once.
   *
   * @param examination what was found
   * @return empty where the crank signal is no wave or its teeth are not known
   */
  public static Optional<InputReplay> of(Examination examination) {
    Observations seen = examination.observations();
    Optional<SampledSignal> signal =
        seen.capture()
            .channel(examination.roles().crank())
            .map(Channel::signal)
            .filter(SampledSignal.class::isInstance)
            .map(SampledSignal.class::cast);
    Optional<WheelPattern> pattern =
        seen.stated().pattern().or(() -> seen.crank().map(c -> c.identification().pattern()));
    if (seen.edges().kind() != SensorKind.VARIABLE_RELUCTANCE
        || signal.isEmpty()
        || pattern.isEmpty()
        || examination.teeth().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new InputReplay(
            new ConditionerReplay(
                signal.get(), ChannelSurvey.of(signal.get()), seen.stated().timedEdge()),
            Examiner.followed(pattern.get()),
            times(examination.teeth().get())));
  }

  private static double[] times(ToothEvents teeth) {
    return IntStream.range(0, teeth.size())
        .filter(i -> teeth.kind(i) != ToothKind.STRAY)
        .mapToDouble(teeth::time)
        .toArray();
  }

  /**
   * Plays the signal.
   *
   * @param circuits to try
   * @return what became of it in each, in their order
   */
  public List<ConditionerReplay.Result> play(List<Conditioner> circuits) {
    return replay.play(circuits, wheel, toothTimes);
  }
}
