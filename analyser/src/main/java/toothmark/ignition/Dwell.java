package toothmark.ignition;

/**
 * How long a coil charged, over all its sparks.
 *
 * @param meanSeconds mean, s
 * @param standardDeviationSeconds sample standard deviation, s; 0 for one spark
 * @param sparks how many sparks it rests on, at least 1
 */
public record Dwell(double meanSeconds, double standardDeviationSeconds, int sparks) {}
