package toothmark.examination;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalShape;
import toothmark.ignition.Coil;
import toothmark.ignition.PickUp;
import toothmark.rotation.AngleTimeline;
import toothmark.units.CrankAngle;

/**
 * Which channels are coils, and which marks top dead centre: from the job sheet, else by how they
 * sit on the turning crank.
 *
 * @param tdc the channel that rises at top dead centre
 * @param coils the coils, with their channels
 * @param assumption what was assumed, one sentence; empty text when the job sheet said all
 */
record IgnitionChannels(Optional<Channel> tdc, List<JobSheet.CoilEntry> coils, String assumption) {

  private static final List<String> TDC_WORDS = List.of("tdc", "pmh", "dead centre", "dead center");

  /** A mark passes the sensor at the same angle each turn, within this scatter. */
  private static final double STEADY_DEGREES = 0.4;

  /** A mark is as long in degrees at each turn, within this share of its length. */
  private static final double STEADY_LENGTH = 0.05;

  private static final double BEFORE_TDC = 90;

  static IgnitionChannels find(
      Capture capture, JobSheet sheet, Channel crank, Optional<AngleTimeline> angle)
      throws JobSheetException {
    Optional<Channel> tdc = Optional.empty();
    if (sheet.channels().tdc().isPresent()) {
      String name = sheet.channels().tdc().get();
      tdc = Optional.of(CrankChannel.named(capture, name, "channels.tdc"));
    }
    for (JobSheet.CoilEntry c : sheet.coils()) {
      CrankChannel.named(capture, c.channel(), "coils.channel");
    }
    boolean stated = tdc.isPresent() || !sheet.coils().isEmpty();
    if (stated || angle.isEmpty()) {
      return new IgnitionChannels(tdc, sheet.coils(), "");
    }
    List<Turning> seen = new ArrayList<>();
    for (Channel c : capture.channels()) {
      if (c != crank) {
        Turning.of(c, angle.get()).ifPresent(seen::add);
      }
    }
    return guess(seen);
  }

  private static IgnitionChannels guess(List<Turning> seen) {
    Optional<Turning> mark =
        seen.stream()
            .filter(Turning::looksLikeMark)
            .min(Comparator.comparingDouble(Turning::markScore));
    List<Turning> coils =
        seen.stream().filter(t -> mark.filter(m -> m == t).isEmpty() && t.looksLikeCoil()).toList();
    double zero = mark.map(m -> m.rise).orElse(0.0) + BEFORE_TDC;
    List<Turning> order =
        coils.stream()
            .sorted(Comparator.comparingDouble(t -> CrankAngle.wrap(t.fall - zero + 180)))
            .toList();
    int cylinders = order.stream().mapToInt(t -> t.isWasted() ? 2 : 1).sum();
    List<Integer> firing = FiringOrders.customary(cylinders);
    List<JobSheet.CoilEntry> entries = new ArrayList<>();
    for (int i = 0; i < order.size(); i++) {
      List<Integer> own =
          order.get(i).isWasted() && i + order.size() < cylinders
              ? List.of(firing.get(i), firing.get(i + order.size()))
              : List.of(firing.get(i));
      Coil coil = new Coil("coil " + (i + 1), own, PickUp.LOGIC);
      entries.add(new JobSheet.CoilEntry(coil, order.get(i).channel.name()));
    }
    return new IgnitionChannels(mark.map(m -> m.channel), entries, sentence(mark, entries));
  }

  private static String sentence(Optional<Turning> mark, List<JobSheet.CoilEntry> coils) {
    List<String> said = new ArrayList<>();
    mark.ifPresent(m -> said.add(CrankChannel.BOOK.of("tdc", m.channel.name())));
    for (JobSheet.CoilEntry c : coils) {
      boolean wasted = c.coil().cylinders().size() == 2;
      said.add(
          CrankChannel.BOOK.of(wasted ? "coil.turn" : "coil.cycle", c.channel(), c.coil().name()));
    }
    return String.join(" ", said);
  }

  /** How a switching channel sits on the turning crank. */
  private record Turning(
      Channel channel,
      double perTurn,
      double rise,
      double riseScatter,
      double fall,
      double lengthScatter,
      double duty) {

    /** Whether it fires once a turn, for two cylinders. */
    boolean isWasted() {
      return perTurn > 0.75;
    }

    static Optional<Turning> of(Channel channel, AngleTimeline angle) {
      ChannelSurvey survey = ChannelSurvey.of(channel.signal());
      if (survey.shape() != SignalShape.TWO_LEVEL && survey.shape() != SignalShape.PULSE_TRAIN) {
        return Optional.empty();
      }
      CrankEdges edges =
          EdgeDetector.withDefaults().withKind(SensorKind.HALL).detect(channel.signal(), survey);
      double[] rises = angles(edges.rising(), angle);
      double[] falls = angles(edges.falling(), angle);
      if (rises.length < 3 || falls.length < 3) {
        return Optional.empty();
      }
      double turns =
          (angle.degreesAt(angle.span().endExclusive())
                  - angle.degreesAt(angle.span().startInclusive()))
              / CrankAngle.REVOLUTION;
      return Optional.of(
          new Turning(
              channel,
              rises.length / turns,
              mean(rises),
              scatter(rises),
              mean(falls),
              lengthScatter(rises, falls),
              survey.duty()));
    }

    boolean looksLikeMark() {
      return says(channel)
          || (perTurn > 0.4
              && perTurn < 1.2
              && riseScatter < STEADY_DEGREES
              && lengthScatter < STEADY_LENGTH);
    }

    /** Lower is more like a mark: a name that says so first, then steadiness. */
    double markScore() {
      return (says(channel) ? 0 : 1000) + riseScatter + lengthScatter + duty;
    }

    boolean looksLikeCoil() {
      return perTurn > 0.3 && perTurn < 6;
    }

    private static boolean says(Channel channel) {
      return CrankChannel.says(channel, TDC_WORDS);
    }

    private static double[] angles(EdgeTrain train, AngleTimeline angle) {
      double[] found = new double[train.size()];
      int n = 0;
      for (int i = 0; i < train.size(); i++) {
        if (angle.covers(train.time(i))) {
          found[n++] = angle.degreesAt(train.time(i));
        }
      }
      return java.util.Arrays.copyOf(found, n);
    }

    private static double mean(double[] degrees) {
      double c = 0;
      double s = 0;
      for (double d : degrees) {
        c += Math.cos(Math.toRadians(d));
        s += Math.sin(Math.toRadians(d));
      }
      return CrankAngle.wrap(Math.toDegrees(Math.atan2(s, c)));
    }

    private static double scatter(double[] degrees) {
      double mean = mean(degrees);
      double sum = 0;
      for (double d : degrees) {
        double e = CrankAngle.wrapDifference(d - mean);
        sum += e * e;
      }
      return Math.sqrt(sum / degrees.length);
    }

    /** Scatter of the angle for which the channel is high, as a share of its mean. */
    private static double lengthScatter(double[] rises, double[] falls) {
      double sum = 0;
      double squares = 0;
      int n = 0;
      int j = 0;
      for (double rise : rises) {
        while (j < falls.length && falls[j] <= rise) {
          j++;
        }
        if (j < falls.length) {
          double length = falls[j] - rise;
          sum += length;
          squares += length * length;
          n++;
        }
      }
      if (n == 0) {
        return Double.MAX_VALUE;
      }
      double mean = sum / n;
      return Math.sqrt(Math.max(0, squares / n - mean * mean)) / mean;
    }
  }
}
