package toothmark.chart;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.findings.Finding;
import toothmark.units.Interval;

/**
 * What is picked out, for every chart to mark in its own way.
 *
 * @param finding a finding
 * @param tooth a tooth of the wheel, from 1
 * @param instant a place in the capture, s
 * @param span the part of the capture that is looked at, s; empty when it is all
 */
public record Picked(
    Optional<Finding> finding, OptionalInt tooth, OptionalDouble instant, Optional<Interval> span) {

  static Picked tooth(int tooth) {
    return new Picked(
        Optional.empty(), OptionalInt.of(tooth), OptionalDouble.empty(), Optional.empty());
  }

  static Picked instant(double timeSeconds) {
    return new Picked(
        Optional.empty(), OptionalInt.empty(), OptionalDouble.of(timeSeconds), Optional.empty());
  }

  boolean isAt(double timeSeconds) {
    return instant.isPresent() && instant.getAsDouble() == timeSeconds;
  }

  boolean isInSpan(double timeSeconds) {
    return span.isPresent() && span.get().contains(timeSeconds);
  }
}
