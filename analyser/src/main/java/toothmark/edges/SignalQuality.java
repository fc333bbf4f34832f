package toothmark.edges;

import java.util.Optional;

/**
 * What limits a crank signal before any tooth is named.
 *
 * @param sampleRateHz samples a second; 0 where the capture holds changes or instants
 * @param low smallest value, in the channel's unit
 * @param high largest value, in the channel's unit
 * @param offset mean, in the channel's unit
 * @param noise standard deviation of the noise of one sample, in the channel's unit; 0 when it
 *     cannot be told
 * @param clippedShare share of samples that stand at the highest or lowest value in flat tops
 * @param samplesPerEdge samples between edges of one direction at the fastest place (5th percentile
 *     of the interval); 0 where the capture holds changes or instants
 * @param hum hum of the mains that lay over the wave; it was taken away before edges were timed
 */
public record SignalQuality(
    double sampleRateHz,
    double low,
    double high,
    double offset,
    double noise,
    double clippedShare,
    double samplesPerEdge,
    Optional<Hum> hum) {

  /**
   * Quality of a signal without hum.
   *
   * @param sampleRateHz as above
   * @param low as above
   * @param high as above
   * @param offset as above
   * @param noise as above
   * @param clippedShare as above
   * @param samplesPerEdge as above
   */
  public SignalQuality(
      double sampleRateHz,
      double low,
      double high,
      double offset,
      double noise,
      double clippedShare,
      double samplesPerEdge) {
    this(sampleRateHz, low, high, offset, noise, clippedShare, samplesPerEdge, Optional.empty());
  }
}
