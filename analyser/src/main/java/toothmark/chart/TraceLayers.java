package toothmark.chart;

import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.jfree.chart.axis.NumberAxis;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.edges.SignalQuality;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.Spark;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.DecodedCrank;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** What is drawn over each channel of a trace. */
final class TraceLayers {

  private static final double FLAG = 11;
  private static final double ODD = 9;
  private static final double SEEN = 5;

  /** How far a number of the axis may reach above its place. */
  private static final double NUMBER = 6;

  /** Kept free at the left edge, where the focus is shown. */
  private static final double INSET = 3;

  private final Optional<Examination> examination;
  private final Ink ink;
  private OptionalInt tooth = OptionalInt.empty();
  private Optional<TriedInput> tried = Optional.empty();

  TraceLayers(Optional<Examination> examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  void setTooth(OptionalInt tooth) {
    this.tooth = tooth;
  }

  void setTried(Optional<TriedInput> tried) {
    this.tried = tried;
  }

  boolean isCrank(Channel channel) {
    return examination.filter(e -> e.roles().crank().equals(channel.name())).isPresent();
  }

  Optional<NumberAxis> angleAxis(Ink ink) {
    return examination.flatMap(
        e ->
            e.observations()
                .crank()
                .map(DecodedCrank::angle)
                .map(
                    angle -> {
                      ToothEvents teeth = e.teeth().orElseThrow();
                      Instants turns =
                          pick(
                              teeth,
                              i -> teeth.kind(i) != ToothKind.STRAY && teeth.tooth(i) == 1,
                              i -> Integer.toString(teeth.revolution(i)));
                      NumberAxis axis = new AngleAxis(Wording.of("axis.trace"), turns, angle);
                      Axes.style(axis, ink);
                      return axis;
                    }));
  }

  List<Layer> of(TraceChart.Drawn drawn) {
    List<Layer> layers = new ArrayList<>();
    Channel channel = drawn.channel();
    Optional<Integer> coil = examination.flatMap(e -> coilOf(e, channel));
    Color colour = colour(channel);
    examination.ifPresent(e -> ground(e, layers));
    coil.ifPresent(i -> dwell(examination.orElseThrow(), i, layers));
    drawn.curve().ifPresent(c -> layers.add(new QuickCurveLayer(c, colour)));
    if (channel.signal() instanceof EventSignal events) {
      layers.add(instants(events));
    }
    coil.ifPresent(i -> sparks(examination.orElseThrow(), i, layers));
    if (isCrank(channel)) {
      crank(examination.orElseThrow(), layers);
    }
    layers.add(new NameLayer(name(channel), colour, ink.paper()));
    return layers;
  }

  private static String name(Channel channel) {
    return channel.unit().isEmpty()
        ? channel.name()
        : Wording.of("axis.unit", channel.name(), channel.unit());
  }

  /** The colour of what a channel is. */
  Color colour(Channel channel) {
    Optional<Integer> coil = examination.flatMap(e -> coilOf(e, channel));
    if (coil.isPresent()) {
      return ink.coil(coil.get());
    }
    boolean tdc =
        examination.flatMap(e -> e.roles().tdc()).filter(channel.name()::equals).isPresent();
    return tdc ? ink.tdc() : isCrank(channel) ? ink.crank() : ink.quiet();
  }

  private static Optional<Integer> coilOf(Examination e, Channel channel) {
    List<CoilTrack> coils = e.observations().coils();
    for (int i = 0; i < coils.size(); i++) {
      if (channel.name().equals(e.roles().coils().get(coils.get(i).coil().name()))) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private void ground(Examination e, List<Layer> layers) {
    e.observations()
        .crank()
        .map(c -> c.wheel().undecided())
        .filter(u -> !u.isEmpty())
        .ifPresent(u -> layers.add(new SpansLayer(u, ink.thin(ink.trouble(), 0.14))));
  }

  private Layer instants(EventSignal events) {
    double[] t = IntStream.range(0, events.size()).mapToDouble(events::time).toArray();
    return new TrainLayer(
        Instants.of(t),
        0,
        new TrainLayer.Look(Mark.DOT, SEEN, ink.crank(), ink.paper(), TrainLayer.Crowd.THIN),
        TrainLayer.Drop.NONE);
  }

  private void dwell(Examination e, int coil, List<Layer> layers) {
    Points starts = new Points();
    Points ends = new Points();
    for (Spark s : e.observations().coils().get(coil).sparks()) {
      if (s.chargeStartSeconds().isPresent()) {
        starts.add(s.chargeStartSeconds().getAsDouble(), 0);
        ends.add(s.timeSeconds(), 0);
      }
    }
    layers.add(new ChargeLayer(starts, ends, ink.thin(ink.coil(coil), 0.18)));
  }

  private void sparks(Examination e, int coil, List<Layer> layers) {
    double[] t =
        e.observations().coils().get(coil).sparks().stream()
            .mapToDouble(Spark::timeSeconds)
            .sorted()
            .toArray();
    layers.add(
        new TrainLayer(
            Instants.of(t),
            Double.NaN,
            look(Mark.coil(coil), 8, ink.text(), TrainLayer.Crowd.HIDE),
            TrainLayer.Drop.NONE));
    double[] absent =
        e.observations().coils().get(coil).absent().stream()
            .mapToDouble(a -> a.timeSeconds())
            .sorted()
            .toArray();
    layers.add(
        new TrainLayer(
            Instants.of(absent),
            Double.NaN,
            look(Mark.CROSS, ODD, ink.trouble(), TrainLayer.Crowd.THIN),
            TrainLayer.Drop.NONE));
  }

  private void crank(Examination e, List<Layer> layers) {
    double level = level(e);
    List<CoilTrack> coils = e.observations().coils();
    for (int i = 0; i < coils.size(); i++) {
      double[] t =
          coils.get(i).sparks().stream().mapToDouble(Spark::timeSeconds).sorted().toArray();
      layers.add(
          new TrainLayer(
              Instants.of(t),
              Double.NaN,
              look(Mark.coil(i), 8, ink.coil(i), TrainLayer.Crowd.HIDE),
              TrainLayer.Drop.DASHED));
    }
    List<Instants> told = new ArrayList<>();
    e.teeth().ifPresent(teeth -> told.addAll(teeth(teeth, level, layers)));
    told.add(0, losses(e, level, layers));
    layers.add(
        new WordsLayer(
            told, ink.trouble(), ink.paper(), () -> tried.isPresent() ? TriedInput.LANE : 0));
    layers.add(new TriedLayer());
  }

  /** Draws the teeth; returns what must be told in words of them. */
  private List<Instants> teeth(ToothEvents teeth, double level, List<Layer> layers) {
    Instants seen =
        pick(teeth, i -> teeth.kind(i) == ToothKind.SEEN, i -> Integer.toString(teeth.tooth(i)));
    layers.add(train(seen, level, look(Mark.DOT, SEEN, ink.text(), TrainLayer.Crowd.HIDE)));
    layers.add(new ChosenLayer(teeth, level));
    Instants missing =
        pick(
            teeth,
            i -> teeth.kind(i) == ToothKind.MISSING,
            i -> Wording.of("mark.missing", Integer.toString(teeth.tooth(i))));
    layers.add(train(missing, level, look(Mark.HOLLOW, ODD, ink.trouble(), TrainLayer.Crowd.THIN)));
    Instants strays =
        pick(teeth, i -> teeth.kind(i) == ToothKind.STRAY, i -> Wording.of("mark.stray"));
    layers.add(train(strays, level, look(Mark.CROSS, ODD, ink.trouble(), TrainLayer.Crowd.THIN)));
    layers.add(new NumbersLayer(seen, ink.quiet(), ink.paper()));
    return List.of(runs(teeth), strays);
  }

  /** Teeth missing in a row are told once, at the first. */
  private static Instants runs(ToothEvents teeth) {
    return pick(
        teeth,
        i -> MissingTeeth.inRow(teeth, i) > 0,
        i -> {
          int n = MissingTeeth.inRow(teeth, i);
          return n == 1
              ? Wording.of("mark.missing", Integer.toString(teeth.tooth(i)))
              : Wording.of("mark.missing.row", Integer.toString(n));
        });
  }

  private Instants losses(Examination e, double level, List<Layer> layers) {
    double[] t =
        e.observations().receiver().losses().stream()
            .mapToDouble(SyncLoss::timeSeconds)
            .sorted()
            .toArray();
    String[] words = new String[t.length];
    java.util.Arrays.fill(words, Wording.of("mark.sync"));
    Instants losses = new Instants(t, words);
    layers.add(train(losses, level, look(Mark.FLAG, FLAG, ink.trouble(), TrainLayer.Crowd.THIN)));
    return losses;
  }

  private static Layer train(Instants events, double level, TrainLayer.Look look) {
    return new TrainLayer(events, level, look, TrainLayer.Drop.NONE);
  }

  private TrainLayer.Look look(Mark mark, double size, Color colour, TrainLayer.Crowd crowd) {
    return new TrainLayer.Look(mark, size, colour, ink.paper(), crowd);
  }

  /** The level at which a tooth is timed: the mean of a wave, half way between two levels. */
  private static double level(Examination e) {
    SignalQuality q = e.observations().edges().quality();
    return switch (e.observations().edges().kind()) {
      case VARIABLE_RELUCTANCE -> q.offset();
      case HALL -> (q.low() + q.high()) / 2;
      case EDGES_ONLY -> 0;
    };
  }

  private static Instants pick(ToothEvents teeth, IntPredicate which, IntFunction<String> word) {
    int[] chosen = IntStream.range(0, teeth.size()).filter(which).toArray();
    return new Instants(
        IntStream.of(chosen).mapToDouble(teeth::time).toArray(),
        IntStream.of(chosen).mapToObj(word).toArray(String[]::new));
  }

  /** What is tried now, along the lower edge. */
  private final class TriedLayer implements Layer {

    @Override
    public void paint(Graphics2D g, Frame frame) {
      Rectangle2D a = frame.area();
      Rectangle2D lane =
          new Rectangle2D.Double(
              a.getX(), a.getMaxY() - TriedInput.LANE, a.getWidth(), TriedInput.LANE);
      if (tried.isPresent()) {
        tried.get().paint(g, lane, frame.fromX(), frame.toX(), ink);
        name(g, lane);
      }
    }

    /** In the margin, where nothing is drawn but the numbers of what the lane stands before. */
    private void name(Graphics2D clipped, Rectangle2D lane) {
      Graphics2D g = (Graphics2D) clipped.create();
      g.setClip(null); // to the plot
      String name = Wording.of("mark.tried");
      g.setFont(Lettering.regular(9));
      FontMetrics metrics = g.getFontMetrics();
      double left = Math.max(INSET, lane.getMinX() - metrics.stringWidth(name) - 4);
      g.setPaint(ink.paper());
      g.fill(
          new Rectangle2D.Double(
              left, lane.getY() - NUMBER, lane.getMinX() - 1 - left, lane.getHeight() + NUMBER));
      g.setPaint(ink.quiet());
      g.drawString(name, (float) left, (float) (lane.getCenterY() + metrics.getAscent() / 2.0 - 1));
      g.dispose();
    }
  }

  /** A ring around every pass of the tooth that is selected now. */
  private final class ChosenLayer implements Layer {

    private final ToothEvents teeth;
    private final double level;
    private OptionalInt drawn = OptionalInt.empty();
    private Layer rings;

    ChosenLayer(ToothEvents teeth, double level) {
      this.teeth = teeth;
      this.level = level;
    }

    @Override
    public void paint(Graphics2D g, Frame frame) {
      if (tooth.isEmpty()) {
        return;
      }
      if (rings == null || !drawn.equals(tooth)) {
        int k = tooth.getAsInt();
        drawn = tooth;
        Instants passes =
            pick(teeth, i -> teeth.kind(i) != ToothKind.STRAY && teeth.tooth(i) == k, i -> "");
        rings = train(passes, level, look(Mark.HOLLOW, 13, ink.text(), TrainLayer.Crowd.THIN));
      }
      rings.paint(g, frame);
    }
  }
}
