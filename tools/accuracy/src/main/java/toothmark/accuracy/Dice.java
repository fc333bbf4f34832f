package toothmark.accuracy;

import java.util.List;
import java.util.Random;

/** Random choices of one case; the same case always gets the same ones. */
public final class Dice {

  private final Random random;

  private Dice(long seed) {
    random = new Random(seed);
  }

  /**
   * The dice of a case.
   *
   * @param name of the case
   * @param purpose a word, so that each purpose has numbers of its own
   * @return dice
   */
  public static Dice of(CaseName name, String purpose) {
    return new Dice(name.seed() * 31 + purpose.hashCode());
  }

  /**
   * A number between two others.
   *
   * @param low inclusive
   * @param high exclusive
   * @return uniform in between
   */
  public double uniform(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /**
   * A number whose logarithm is uniform.
   *
   * @param low inclusive, positive
   * @param high exclusive
   * @return between the two
   */
  public double logUniform(double low, double high) {
    return low * StrictMath.exp(random.nextDouble() * StrictMath.log(high / low));
  }

  /**
   * A whole number.
   *
   * @param low inclusive
   * @param high inclusive
   * @return one of them
   */
  public int between(int low, int high) {
    return low + random.nextInt(high - low + 1);
  }

  /**
   * An event of given probability.
   *
   * @param probability 0 to 1
   * @return whether it came
   */
  public boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /**
   * A normal number.
   *
   * @return of mean 0 and standard deviation 1
   */
  public double normal() {
    return random.nextGaussian();
  }

  /**
   * A waiting time.
   *
   * @param mean of it
   * @return exponentially distributed
   */
  public double exponential(double mean) {
    return -mean * StrictMath.log(1.0 - random.nextDouble());
  }

  /**
   * One of several.
   *
   * @param choice the things
   * @param <T> their type
   * @return one of them
   */
  public <T> T pick(List<T> choice) {
    return choice.get(random.nextInt(choice.size()));
  }
}
