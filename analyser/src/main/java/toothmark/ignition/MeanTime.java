package toothmark.ignition;

import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;

/**
 * How long something of a coil took, such as its charge, over its sparks.
 *
 * @param meanSeconds mean, s
 * @param standardDeviationSeconds sample standard deviation, s; 0 for one spark
 * @param sparks how many sparks it rests on, at least 1
 */
public record MeanTime(double meanSeconds, double standardDeviationSeconds, int sparks) {

  static MeanTime of(double[] seconds) {
    double sd = seconds.length == 1 ? 0 : new StandardDeviation().evaluate(seconds);
    return new MeanTime(StatUtils.mean(seconds), sd, seconds.length);
  }
}
