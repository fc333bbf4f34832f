package toothmark.timing;

import java.util.List;
import java.util.Optional;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.FiringOrder;
import toothmark.rotation.AngleTimeline;

/**
 * What timing is measured from.
 *
 * @param timeline the crank's angle
 * @param wheel wheel and sensor
 * @param marks of top dead centre; empty when there is no TDC channel
 * @param readings of top dead centre, by hand
 * @param coils what each coil did
 * @param order the engine's firing order
 * @param commanded what the controller commanded; empty when not known
 */
public record TimingInputs(
    AngleTimeline timeline,
    WheelSetting wheel,
    List<TdcMark> marks,
    TdcReadings readings,
    List<CoilTrack> coils,
    FiringOrder order,
    Optional<CommandedAdvance> commanded) {

  /** Copies the lists. */
  public TimingInputs {
    marks = List.copyOf(marks);
    coils = List.copyOf(coils);
  }
}
