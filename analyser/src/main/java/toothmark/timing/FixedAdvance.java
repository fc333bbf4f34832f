package toothmark.timing;

import java.util.OptionalDouble;
import toothmark.rotation.AngleTimeline;

/**
 * Fixed timing: the controller is set to one advance, as for a check with a light.
 *
 * @param degrees before TDC
 */
public record FixedAdvance(double degrees) implements CommandedAdvance {

  @Override
  public OptionalDouble at(double timeSeconds, AngleTimeline timeline, ScheduledSpeed look) {
    return OptionalDouble.of(degrees);
  }
}
