package toothmark.wheel;

import java.util.List;
import toothmark.units.Interval;

/**
 * Every edge named: tooth or stray, and every missing tooth in its place.
 *
 * @param pattern the wheel by which the edges were named
 * @param events all of them, in time order
 * @param geometry what was learned of each tooth
 * @param undecided spans in which the labels cannot be trusted; they hold no tooth events
 * @param standstills those of them in which the crank as good as stood still; they hold no strays
 *     either, since an edge may be a tooth on its way back
 */
public record DecodedWheel(
    WheelPattern pattern,
    ToothEvents events,
    ToothGeometry geometry,
    List<Interval> undecided,
    List<Interval> standstills) {

  /** Copies the lists. */
  public DecodedWheel {
    undecided = List.copyOf(undecided);
    standstills = List.copyOf(standstills);
  }

  /**
   * Spans in which the labels cannot be trusted though the crank turned.
   *
   * @return the undecided ones that are no standstill
   */
  public List<Interval> undecidedTurning() {
    return undecided.stream().filter(i -> !standstills.contains(i)).toList();
  }
}
