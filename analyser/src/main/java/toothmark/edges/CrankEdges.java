package toothmark.edges;

import java.util.Optional;

/**
 * What the crank channel holds.
 *
 * @param kind kind of signal
 * @param falling falling edges; for {@link SensorKind#EDGES_ONLY} all edges
 * @param rising rising edges; empty for {@link SensorKind#EDGES_ONLY}
 * @param quality what limits the capture
 * @param survey the first look at the samples, for whoever goes through them again; empty where
 *     there are none
 */
public record CrankEdges(
    SensorKind kind,
    EdgeTrain falling,
    EdgeTrain rising,
    SignalQuality quality,
    Optional<ChannelSurvey> survey) {

  /**
   * Edges without a survey.
   *
   * @param kind kind of signal
   * @param falling falling edges
   * @param rising rising edges
   * @param quality what limits the capture
   */
  public CrankEdges(SensorKind kind, EdgeTrain falling, EdgeTrain rising, SignalQuality quality) {
    this(kind, falling, rising, quality, Optional.empty());
  }

  /**
   * The edges of one direction.
   *
   * @param direction which way the signal goes
   * @return that train
   */
  public EdgeTrain train(EdgeDirection direction) {
    return direction == EdgeDirection.FALLING ? falling : rising;
  }
}
