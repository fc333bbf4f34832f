package toothmark.report;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jfree.data.Range;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.Reading;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;
import toothmark.chart.Curve;
import toothmark.chart.SignalCurve;
import toothmark.edges.EdgeTrain;
import toothmark.examination.Glance;
import toothmark.report.VerdictText.Line;
import toothmark.report.VerdictText.Role;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Interval;
import toothmark.units.Say;

/**
 * What a capture holds, on one screen of a terminal: its channels with a small picture of each, how
 * the file was read, and what it is fast and long enough for.
 */
public final class ChannelsText {

  private static final int PLOT_ROWS = 3;
  private static final int EDGES_DRAWN = 40;
  private static final double DEGREES_A_SECOND_PER_RPM = 6;

  /** Samples a tooth for a wave to be drawn well: 8 to 10 (common practice). */
  private static final double SAMPLES_WANTED = 8;

  /** A gap must come by some times before its repeating can be trusted (common practice). */
  private static final double TURNS_WANTED = 4;

  private final Glance seen;
  private final Capture capture;
  private final Interval drawn;
  private final ScreenLines lines;

  private ChannelsText(Glance seen, int width) {
    this.seen = seen;
    this.capture = seen.capture();
    this.drawn = excerpt();
    this.lines = new ScreenLines(width);
  }

  /**
   * Says what a capture holds.
   *
   * @param seen what it holds
   * @param width columns of the screen
   * @return the lines
   */
  public static List<Line> of(Glance seen, int width) {
    ChannelsText text = new ChannelsText(seen, width);
    text.lines.wrap(Role.VERDICT, "", text.capture.file() + ": " + text.capture.reading().format());
    text.lines.gap();
    text.capture.channels().forEach(text::channel);
    text.lines.figure(
        Wording.of("channels.drawn"),
        Wording.of(
            "channels.excerpt",
            Say.seconds(text.drawn.seconds()),
            Say.at(text.drawn.startInclusive())));
    text.lines.gap();
    text.fitness();
    text.lines.gap();
    text.reading(text.capture.reading());
    return text.lines.lines();
  }

  /** Some teeth in the middle of the record; all of it where there are too few. */
  private Interval excerpt() {
    EdgeTrain train = seen.edges().falling();
    int middle = train.size() / 2;
    int half = Math.min(EDGES_DRAWN / 2, middle - 1);
    return half < 1
        ? capture.span()
        : new Interval(train.time(middle - half), train.time(middle + half));
  }

  private void channel(Channel channel) {
    ChannelRole role = ChannelRole.of(channel.name(), seen.roles());
    String content = content(channel);
    lines.figure(
        channel.name(),
        role == ChannelRole.UNUSED
            ? content
            : Wording.of("channels.taken", Wording.of("role." + role.label()), content));
    for (String row : plot(channel.signal())) {
      lines.add(new Line(Role.PLAIN, " ", row));
    }
  }

  private static String content(Channel channel) {
    Signal signal = channel.signal();
    if (signal instanceof SampledSignal s) {
      Range range = range(SignalCurve.of(signal).orElseThrow(), signal.span());
      String highest = Say.number(range.getUpperBound(), 3);
      return Wording.of(
          "channels.samples",
          Say.scaled(1 / s.intervalSeconds(), "Hz"),
          Say.count(s.size()),
          Say.number(range.getLowerBound(), 3),
          channel.unit().isEmpty() ? highest : highest + Say.THIN + channel.unit());
    }
    if (signal instanceof StepSignal s) {
      return steps(Wording.count(s.size(), "channels.levels"), s.resolutionSeconds());
    }
    EventSignal events = (EventSignal) signal;
    return steps(Wording.count(events.size(), "channels.edges"), events.resolutionSeconds());
  }

  private static String steps(String events, double resolutionSeconds) {
    return resolutionSeconds > 0
        ? Wording.of("channels.steps", events, Say.seconds(resolutionSeconds))
        : events;
  }

  private static Range range(Curve curve, Interval span) {
    return curve.up(span.startInclusive(), span.endExclusive());
  }

  private List<String> plot(Signal signal) {
    int columns = lines.room();
    double from = drawn.startInclusive();
    double to = drawn.endExclusive();
    Optional<Curve> curve = SignalCurve.of(signal);
    Range range = curve.map(c -> range(c, drawn)).orElse(new Range(0, 1));
    Consumer<Curve.Line> pen =
        curve.isPresent()
            ? line -> curve.get().trace(from, to, 2 * columns, line)
            : line -> stems((EventSignal) signal, line);
    double[] window = {from, to, range.getLowerBound(), range.getUpperBound()};
    return TextPlot.of(columns, PLOT_ROWS, window, pen);
  }

  private static void stems(EventSignal events, Curve.Line line) {
    for (int i = 0; i < events.size(); i++) {
      line.moveTo(events.time(i), 0);
      line.lineTo(events.time(i), 1);
    }
  }

  private void fitness() {
    if (seen.crank().isEmpty()) {
      lines.figure(Wording.of("channels.fit"), seen.undecodable());
      return;
    }
    DecodedCrank crank = seen.crank().get();
    Interval span = crank.angle().span();
    double turns =
        (crank.angle().degreesAt(span.endExclusive())
                - crank.angle().degreesAt(span.startInclusive()))
            / 360;
    double most = crank.speed().maxRpm();
    lines.figure(
        Wording.of("screen.wheel"),
        Wording.of(
            "channels.wheel",
            crank.identification().pattern(),
            Say.number(crank.speed().minRpm(), 0),
            Say.rpm(most)));
    lines.figure(
        Wording.of("channels.long"),
        Wording.of(
            turns < TURNS_WANTED ? "channels.turns.few" : "channels.turns", Say.number(turns, 1)));
    fast(most);
  }

  private void fast(double mostRpm) {
    double rate = seen.edges().quality().sampleRateHz();
    double samples = seen.edges().quality().samplesPerEdge();
    if (rate <= 0 || samples <= 0) {
      return;
    }
    lines.figure(
        Wording.of("channels.fast"),
        Wording.of(
            samples < SAMPLES_WANTED ? "channels.rate.low" : "channels.rate",
            Say.number(samples, 1),
            Say.rpm(mostRpm),
            Say.rpm(mostRpm * samples / SAMPLES_WANTED),
            Say.number(DEGREES_A_SECOND_PER_RPM * mostRpm / rate, 2)));
  }

  private void reading(Reading reading) {
    for (Reading.Fact fact : reading.facts()) {
      lines.figure(Wording.of("channels.read"), fact.label() + ": " + fact.value());
    }
    for (String doubt : reading.doubts()) {
      lines.wrap(Role.WATCH, Wording.of("channels.note"), doubt);
    }
    if (!seen.roles().assumption().isEmpty()) {
      lines.wrap(Role.WATCH, Wording.of("channels.guessed"), seen.roles().assumption());
    }
  }
}
