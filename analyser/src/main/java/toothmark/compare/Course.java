package toothmark.compare;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import toothmark.units.Measured;

/**
 * One figure over several examinations.
 *
 * @param name what it is
 * @param unit that of the values
 * @param values one for each examination, by date; empty where it was not measured
 */
public record Course(String name, String unit, List<Optional<Measured>> values) {

  private static final double LEVEL = 0.95;

  /** Copies the list. */
  public Course {
    values = List.copyOf(values);
  }

  /**
   * Whether the figure moved: its values differ by more than their uncertainties.
   *
   * <p>The sum of the squared deviations from the weighted mean, each over its variance, is chi
   * squared with one degree of freedom less than there are values when nothing moved (Birge, Phys.
   * Rev. 40 (1932) 207-227).
   *
   * @return whether chance gives such a sum less often than once in twenty; false for one value
   */
  public boolean moved() {
    List<Measured> known = known();
    if (known.size() < 2) {
      return false;
    }
    double weights = known.stream().mapToDouble(Course::weight).sum();
    double mean = known.stream().mapToDouble(m -> weight(m) * m.value()).sum() / weights;
    double sum = known.stream().mapToDouble(m -> weight(m) * Math.pow(m.value() - mean, 2)).sum();
    return sum > new ChiSquaredDistribution(known.size() - 1.0).inverseCumulativeProbability(LEVEL);
  }

  /**
   * The first value and the last.
   *
   * @return what changed between them; empty where fewer than two are known
   */
  public Optional<Change> overall() {
    List<Measured> known = known();
    return known.size() < 2
        ? Optional.empty()
        : Optional.of(
            new Change(
                name, unit, Optional.of(known.get(0)), Optional.of(known.get(known.size() - 1))));
  }

  private List<Measured> known() {
    return values.stream().flatMap(Optional::stream).toList();
  }

  private static double weight(Measured m) {
    double u = Math.max(m.standardUncertainty(), 1e-12);
    return 1 / (u * u);
  }
}
