package toothmark.edges;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;

/**
 * Finds when a crank signal crossed, in both directions.
 *
 * <p>Not a controller's view of the signal, which is {@code toothmark.receiver}: this uses the
 * whole record, both ways in time. Edges that are no teeth are reported with a low strength rather
 * than dropped. A wave is taken as the derivative of flux and searched for extrema of flux ({@link
 * FluxEdges}); a switching signal is cut half way between its levels ({@link LevelCrossings}).
 *
 * <p>The default decides from the samples whether the signal is a wave or switches between two
 * levels.
 */
public final class EdgeDetector {

  private final Optional<SensorKind> kind;

  private EdgeDetector(Optional<SensorKind> kind) {
    this.kind = kind;
  }

  /**
   * A detector that finds the kind of sensor from the samples.
   *
   * @return the default
   */
  public static EdgeDetector withDefaults() {
    return new EdgeDetector(Optional.empty());
  }

  /**
   * States the kind of sensor.
   *
   * @param stated wave or two levels; has no effect on a signal that holds changes or instants only
   * @return a detector that does not look for itself
   */
  public EdgeDetector withKind(SensorKind stated) {
    return new EdgeDetector(Optional.of(stated));
  }

  /**
   * Finds the edges.
   *
   * @param signal the crank channel
   * @return all edges with what limits them; empty trains when nothing crosses
   */
  public CrankEdges detect(Signal signal) {
    return detect(signal, ChannelSurvey.of(signal));
  }

  /**
   * Finds the edges of a signal that has been surveyed.
   *
   * @param signal the crank channel
   * @param survey of that signal
   * @return all edges with what limits them; empty trains when nothing crosses
   */
  public CrankEdges detect(Signal signal, ChannelSurvey survey) {
    if (signal instanceof StepSignal steps) {
      return ListedEdges.of(steps);
    }
    if (signal instanceof EventSignal events) {
      return ListedEdges.of(events);
    }
    SampledSignal sampled = (SampledSignal) signal;
    boolean switches = kind.map(k -> k == SensorKind.HALL).orElse(survey.levels().isPresent());
    return switches ? LogicEdges.detect(sampled, survey) : wave(sampled, survey);
  }

  private static CrankEdges wave(SampledSignal signal, ChannelSurvey survey) {
    SampleStatistics s = survey.statistics();
    Wave wave = Wave.of(signal, s);
    Extrema extrema = FluxEdges.find(wave);
    Wave finer = CoarseSampling.refine(wave, extrema, s);
    if (finer != wave) {
      wave = finer;
      extrema = FluxEdges.find(wave);
    }
    Wave seen = wave;
    Extrema turns = extrema;
    CompletableFuture<HumTrack> listening =
        CompletableFuture.supplyAsync(() -> HumFinder.find(seen, turns));
    FluxTiming.FluxTrains trains = FluxTiming.of(wave, extrema);
    HumTrack hum = listening.join();
    if (!hum.isNone()) {
      wave = wave.without(hum);
      trains = FluxTiming.of(wave, FluxEdges.find(wave));
    }
    EdgeTrain fuller =
        trains.falling().size() >= trains.rising().size() ? trains.falling() : trains.rising();
    return new CrankEdges(
        SensorKind.VARIABLE_RELUCTANCE,
        trains.falling(),
        trains.rising(),
        Quality.of(signal, s, wave.offset(), fuller, hum.asHum(wave.signal().intervalSeconds())),
        Optional.of(survey));
  }
}
