package toothmark.edges;

/**
 * What the crank channel holds.
 *
 * @param kind kind of signal
 * @param falling falling edges; for {@link SensorKind#EDGES_ONLY} all edges
 * @param rising rising edges; empty for {@link SensorKind#EDGES_ONLY}
 * @param quality what limits the capture
 */
public record CrankEdges(
    SensorKind kind, EdgeTrain falling, EdgeTrain rising, SignalQuality quality) {

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
