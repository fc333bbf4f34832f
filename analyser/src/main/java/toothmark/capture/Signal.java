package toothmark.capture;

import toothmark.units.Interval;

/** What one channel recorded: samples on a clock, changes of level, or bare instants. */
public sealed interface Signal permits SampledSignal, StepSignal, EventSignal {

  /**
   * From the first instant recorded to just after the last.
   *
   * @return seconds from the capture's own zero
   */
  Interval span();
}
