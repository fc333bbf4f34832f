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
import toothmark.receiver.LevelWindow;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelPattern;

/** Plays the crank signal of an examined capture to other input circuits than the reference. */
public final class InputReplay {

  private final ConditionerReplay replay;
  private final FollowedWheel wheel;
  private final Teeth teeth;

  private InputReplay(ConditionerReplay replay, FollowedWheel wheel, Teeth teeth) {
    this.replay = replay;
    this.wheel = wheel;
    this.teeth = teeth;
  }

  /**
   * Prepares a replay.
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
    Optional<ChannelSurvey> survey = seen.edges().survey();
    if (seen.edges().kind() != SensorKind.VARIABLE_RELUCTANCE
        || signal.isEmpty()
        || survey.isEmpty()
        || pattern.isEmpty()
        || examination.teeth().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new InputReplay(
            new ConditionerReplay(signal.get(), survey.get(), seen.stated().timedEdge()),
            Examiner.followed(pattern.get()),
            new Teeth(examination.teeth().get())));
  }

  /**
   * Plays the signal.
   *
   * @param circuits to try
   * @return what became of it in each, in their order
   */
  public List<ConditionerReplay.Result> play(List<Conditioner> circuits) {
    return replay.play(circuits, wheel, teeth.times);
  }

  /**
   * Tries many fixed levels.
   *
   * @return what each pair of levels would have cost
   */
  public LevelWindow sweep() {
    return replay.sweep(wheel, teeth.times);
  }

  /**
   * How far the peaks of one tooth of the wheel rise over the level that arms the reference
   * circuit.
   *
   * @param tooth its number
   * @param least peak over level, over all turns; not above 1 where it was not armed
   * @param atSeconds when that was, s
   * @param median peak over level
   */
  public record ToothMargin(int tooth, double least, double atSeconds, double median) {}

  /**
   * The arming margins of all teeth of the wheel.
   *
   * @return by number; the first tooth of the record counts for none
   */
  public List<ToothMargin> armingMargins() {
    double[] margins = replay.armingMargins(teeth.times);
    return IntStream.of(teeth.numbers)
        .skip(1)
        .distinct()
        .sorted()
        .mapToObj(k -> margin(k, margins))
        .toList();
  }

  private ToothMargin margin(int tooth, double[] margins) {
    int[] of = IntStream.range(1, margins.length).filter(i -> teeth.numbers[i] == tooth).toArray();
    int least = of[0];
    for (int i : of) {
      least = margins[i] < margins[least] ? i : least;
    }
    double[] sorted = IntStream.of(of).mapToDouble(i -> margins[i]).sorted().toArray();
    return new ToothMargin(tooth, margins[least], teeth.times[least], sorted[sorted.length / 2]);
  }

  /** Teeth that passed, seen or missing. */
  private static final class Teeth {

    private final double[] times;
    private final int[] numbers;

    Teeth(ToothEvents events) {
      int[] passed =
          IntStream.range(0, events.size())
              .filter(i -> events.kind(i) != ToothKind.STRAY)
              .toArray();
      times = IntStream.of(passed).mapToDouble(events::time).toArray();
      numbers = IntStream.of(passed).map(events::tooth).toArray();
    }
  }
}
