package toothmark.desktop;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.findings.Finding;

/**
 * What is picked out, in all views alike.
 *
 * @param finding a finding
 * @param tooth a tooth of the wheel, from 1
 * @param instant a place in the capture, s
 */
record Selected(Optional<Finding> finding, OptionalInt tooth, OptionalDouble instant) {

  static final Selected NOTHING =
      new Selected(Optional.empty(), OptionalInt.empty(), OptionalDouble.empty());

  Selected withInstant(double timeSeconds) {
    return new Selected(finding, tooth, OptionalDouble.of(timeSeconds));
  }

  Selected withTooth(OptionalInt next) {
    return new Selected(finding, next, instant);
  }

  Selected withFinding(Finding next) {
    return new Selected(Optional.of(next), tooth, instant);
  }
}
