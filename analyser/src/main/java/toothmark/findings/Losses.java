package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import toothmark.capture.Channel;
import toothmark.capture.SampledSignal;
import toothmark.edges.SensorKind;
import toothmark.receiver.SyncLoss;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;

/**
 * Every run of lost teeth, and what lost it: an opening wire, one tooth of the wheel, low speed,
 * high speed, a disturbance just before, or nothing in particular.
 */
final class Losses {

  static final String OPEN = "intermittent-connection";
  static final String TOOTH = "damaged-tooth";
  static final String SLOW = "weak-signal";
  static final String FAST = "capture-too-slow";
  static final String DROPOUT = "input-stage-dropout";
  static final String HIDDEN = "hidden-by-stray";
  static final String RANDOM = "random-noise-pickup";

  /** A tooth lost within this many pitches after a stray may be lost through it. */
  private static final double SHADOW_PITCHES = 1.6;

  /** A silence lasts for so many teeth, of which less than that share may still come. */
  private static final double LEAST_SILENT_TEETH = 3;

  private static final double SILENT_SHARE = 0.1;

  private final List<LostTeeth> events;
  private final List<Mixture.Part> parts;
  private final List<Interval> silences;

  private Losses(List<LostTeeth> events, List<Mixture.Part> parts, List<Interval> silences) {
    this.events = List.copyOf(events);
    this.parts = List.copyOf(parts);
    this.silences = List.copyOf(silences);
  }

  static Losses of(Turns turns, ReceiverView receiver, Strays strays, Observations seen) {
    boolean wave = seen.edges().kind() == SensorKind.VARIABLE_RELUCTANCE;
    List<LostTeeth> events =
        collect(turns, receiver, strays).stream()
            .filter(e -> !(wave && e.rpm() < Strays.STILL_RPM))
            .filter(e -> !turns.runsDown(e.first(), CrankAngle.REVOLUTION))
            .toList();
    int count = strays.events().size();
    List<Mixture.Source> sources = new LossSources(turns, events, count, seen.edges().kind()).all();
    List<Interval> silences =
        turns.crank().wheel().undecidedTurning().stream()
            .filter(u -> isSilent(u, turns, seen))
            .toList();
    return new Losses(events, Mixture.divide(events.size(), sources), silences);
  }

  /** Whether a running engine gave no signal for so long that its teeth could not be counted on. */
  private static boolean isSilent(Interval u, Turns turns, Observations seen) {
    int before = turns.toothBefore(u.startInclusive());
    int after = turns.toothBefore(u.endExclusive()) + 1;
    if (before < 1 || after >= turns.teeth()) {
      return false;
    }
    double slowest = Math.min(turns.rpmAt(turns.time(before - 1)), turns.rpmAt(turns.time(after)));
    double due = u.seconds() * 6 * slowest / turns.pattern().pitchDegrees();
    double came =
        Arrays.stream(seen.edges().train(turns.crank().identification().toothEdge()).times())
            .filter(t -> t > u.startInclusive() && t < u.endExclusive())
            .count();
    return slowest >= SyncLoss.CRANKING_BELOW_RPM
        && due >= LEAST_SILENT_TEETH
        && came < SILENT_SHARE * due
        && !isPause(u, seen);
  }

  /** Whether the recorder itself paused. */
  private static boolean isPause(Interval u, Observations seen) {
    return seen.capture().channels().stream()
        .map(Channel::signal)
        .filter(SampledSignal.class::isInstance)
        .map(SampledSignal.class::cast)
        .anyMatch(
            s ->
                IntStream.range(1, s.segments())
                    .mapToDouble(i -> s.timeOf(s.segmentStart(i)))
                    .anyMatch(t -> t > u.startInclusive() && t <= u.endExclusive()));
  }

  /**
   * Spans in which the signal of a running engine was gone for longer than teeth can be counted.
   */
  List<Interval> silences() {
    return silences;
  }

  /** Spans in which two teeth or more in a row gave no edge at all: the wire may be open. */
  static List<Interval> dark(Turns turns) {
    List<Interval> dark = new ArrayList<>();
    int from = -1;
    for (int i = 0; i < turns.teeth(); i++) {
      if (!turns.seen(i)) {
        from = from < 0 ? i : from;
      } else {
        if (from > 0 && i - from >= 2) {
          double pitch = turns.pitchSeconds(turns.time(i));
          dark.add(new Interval(turns.time(from - 1), turns.time(i) + 0.3 * pitch));
        }
        from = -1;
      }
    }
    return dark;
  }

  private static List<LostTeeth> collect(Turns turns, ReceiverView receiver, Strays strays) {
    List<LostTeeth> events = new ArrayList<>();
    int i = 0;
    while (i < turns.teeth()) {
      int from = i;
      while (i < turns.teeth() && !(turns.seen(i) && receiver.got(i))) {
        i++;
      }
      if (i > from && from > 0 && i < turns.teeth()) {
        events.add(event(turns, from, i, strays));
      }
      i++;
    }
    return events;
  }

  private static LostTeeth event(Turns turns, int from, int to, Strays strays) {
    Interval during = new Interval(turns.time(from - 1), turns.time(to));
    int absent = 0;
    for (int i = from; i < to; i++) {
      absent += turns.seen(i) ? 0 : 1;
    }
    double middle = (during.startInclusive() + during.endExclusive()) / 2;
    double rpm = turns.rpmAt(middle);
    return new LostTeeth(
        from,
        to - from,
        during,
        turns.number(from),
        rpm,
        absent,
        strayBefore(turns, turns.time(from), strays));
  }

  /** What an open wire strews follows from the loss and cannot be its cause. */
  private static OptionalInt strayBefore(Turns turns, double lost, Strays strays) {
    double pitch = turns.pitchSeconds(lost);
    int before = strays.lastUpTo(lost + 0.5 * pitch);
    return before >= 0
            && lost - strays.events().get(before).timeSeconds() <= SHADOW_PITCHES * pitch
            && !strays.cause(before).equals(StraySources.OPEN)
        ? OptionalInt.of(before)
        : OptionalInt.empty();
  }

  List<LostTeeth> events() {
    return events;
  }

  List<Mixture.Part> parts() {
    return parts;
  }

  /** The losses put down to a cause. */
  List<LostTeeth> of(String cause) {
    return parts.stream()
        .filter(p -> p.cause().equals(cause))
        .flatMap(p -> p.events().stream())
        .sorted()
        .map(events::get)
        .toList();
  }

  /** The part of a cause with the greatest gain, where it has one. */
  Optional<Mixture.Part> part(String cause) {
    return parts.stream()
        .filter(p -> p.cause().equals(cause))
        .max(java.util.Comparator.comparingDouble(Mixture.Part::gain));
  }

  /** What each loss is put down to, in the order of the events. */
  String[] causes() {
    String[] c = new String[events.size()];
    for (Mixture.Part p : parts) {
      p.events().forEach(e -> c[e] = p.cause());
    }
    return c;
  }
}
