package toothmark.compare;

import java.util.Optional;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * One figure before and after.
 *
 * @param name what it is
 * @param unit that of the values
 * @param before empty where it was not measured
 * @param after empty where it was not measured
 */
public record Change(
    String name, String unit, Optional<Measured> before, Optional<Measured> after) {

  /** What can be said of a change. */
  public enum Verdict {
    /** The difference is larger than its 95 % interval. */
    CHANGED,
    /** It is not, so chance alone can make it. */
    WITHIN_UNCERTAINTY,
    /** The figure is missing on one side. */
    NOT_COMPARABLE
  }

  /**
   * After less before. The two are independent captures, so variances add (JCGM 100:2008, 5.1.2).
   *
   * @return empty where either is missing
   */
  public Optional<Measured> difference() {
    return before.flatMap(
        b ->
            after.map(
                a ->
                    new Measured(
                        a.value() - b.value(),
                        Math.hypot(a.standardUncertainty(), b.standardUncertainty()))));
  }

  /**
   * Whether it changed.
   *
   * @return the verdict at 95 %
   */
  public Verdict verdict() {
    return difference()
        .map(
            d ->
                Math.abs(d.value()) > Say.EXPAND * d.standardUncertainty()
                    ? Verdict.CHANGED
                    : Verdict.WITHIN_UNCERTAINTY)
        .orElse(Verdict.NOT_COMPARABLE);
  }
}
