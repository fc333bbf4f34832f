package toothmark.edges;

/**
 * Hum of the mains that lies over a wave.
 *
 * @param frequencyHz of its fundamental
 * @param amplitude peak of its fundamental, in the channel's unit
 */
public record Hum(double frequencyHz, double amplitude) {}
