package toothmark.ignition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.edges.CrankEdges;
import toothmark.rotation.AngleTimeline;

/**
 * Reads the coils' channels: charges, sparks, and sparks that did not come.
 *
 * <p>Times come from the channel alone; the crank's angle is looked up at each. A step of the
 * signal between two samples is placed midway, with a standard uncertainty of the sampling interval
 * over the square root of 12 (JCGM 100:2008, 4.3.7).
 */
public final class CoilReader {

  private CoilReader() {}

  /**
   * Reads all coils of a capture.
   *
   * @param channels the coils that were recorded
   * @param timeline the crank's angle
   * @param order the engine's firing order
   * @return one track for each channel, in the same order
   * @throws IllegalArgumentException if a coil names a cylinder that is not in the firing order
   */
  public static List<CoilTrack> read(
      List<CoilChannel> channels, AngleTimeline timeline, FiringOrder order) {
    List<Firings> firings = new ArrayList<>();
    List<FiringGrid> grids = new ArrayList<>();
    for (CoilChannel c : channels) {
      Firings f = firings(c);
      firings.add(f);
      grids.add(FiringGrid.of(c.coil(), order, Placed.of(f, timeline)));
    }
    CrankWindow window = CrankWindow.around(grids);
    List<CoilTrack> tracks = new ArrayList<>();
    for (int i = 0; i < channels.size(); i++) {
      tracks.add(track(channels.get(i).coil(), firings.get(i), grids.get(i), window, timeline));
    }
    return tracks;
  }

  private static Firings firings(CoilChannel channel) {
    Signal signal = channel.signal();
    if (signal instanceof EventSignal instants) {
      Firings out = new Firings(ChargingLevel.HIGH);
      double u = instants.resolutionSeconds() / Math.sqrt(12);
      for (int i = 0; i < instants.size(); i++) {
        out.add(Double.NaN, instants.time(i), u);
      }
      return out;
    }
    return signal instanceof SampledSignal samples ? sampled(samples, channel) : stepped(channel);
  }

  private static Firings sampled(SampledSignal signal, CoilChannel channel) {
    return switch (channel.coil().pickUp()) {
      case LOGIC ->
          SteadyDwell.sharpen(
              LogicFirings.read(channel.switching().get()), signal.intervalSeconds());
      case PRIMARY_VOLTAGE -> PrimaryFirings.read(signal);
      case CURRENT_CLAMP -> CurrentFirings.read(signal);
      case INDUCTIVE_CLAMP -> BurstFirings.read(signal);
    };
  }

  /** A channel that a logic analyser recorded, behind a comparator. */
  private static Firings stepped(CoilChannel channel) {
    CrankEdges edges = channel.switching().get();
    return switch (channel.coil().pickUp()) {
      case LOGIC -> LogicFirings.read(edges);
      case PRIMARY_VOLTAGE -> LogicFirings.read(edges, ChargingLevel.LOW);
      case CURRENT_CLAMP -> LogicFirings.read(edges, ChargingLevel.HIGH);
      case INDUCTIVE_CLAMP -> BurstFirings.read(edges.rising());
    };
  }

  private static CoilTrack track(
      Coil coil, Firings firings, FiringGrid grid, CrankWindow window, AngleTimeline timeline) {
    List<Spark> sparks = new ArrayList<>();
    Placed placed = grid.placed();
    for (int i = 0; i < firings.size(); i++) {
      double start = firings.chargeStart(i);
      sparks.add(
          new Spark(
              firings.spark(i),
              firings.uncertainty(i),
              Double.isNaN(start) ? OptionalDouble.empty() : OptionalDouble.of(start),
              placed.crank(i),
              grid.turn(i)));
    }
    return new CoilTrack(
        coil,
        firings.level(),
        grid.everyDegrees(),
        sparks,
        grid.absent(window, timeline),
        mean(grid, firings::dwell),
        mean(grid, firings::burn),
        firings.charge());
  }

  /** Over the sparks of which it is known, repeated ones aside. */
  private static Optional<MeanTime> mean(FiringGrid grid, IntToDoubleFunction seconds) {
    double[] known =
        IntStream.range(0, grid.placed().size())
            .filter(i -> grid.turn(i) == Spark.Turn.FIRST)
            .mapToDouble(seconds)
            .filter(v -> !Double.isNaN(v))
            .toArray();
    return known.length == 0 ? Optional.empty() : Optional.of(MeanTime.of(known));
  }
}
