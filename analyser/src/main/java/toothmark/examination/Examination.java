package toothmark.examination;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import toothmark.findings.Diagnosis;
import toothmark.findings.Observations;
import toothmark.ignition.Coil;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.FiringOrder;
import toothmark.wheel.ToothEvents;

/**
 * Everything that a run found, ready to be drawn and said.
 *
 * @param sheet what the user stated
 * @param roles which channel was taken for what
 * @param observations what each stage found
 * @param diagnosis what it means
 * @param teeth the decoding's events with the receiver's stray edges merged in; empty when nothing
 *     could be decoded
 */
public record Examination(
    JobSheet sheet,
    Roles roles,
    Observations observations,
    Diagnosis diagnosis,
    Optional<ToothEvents> teeth) {

  /**
   * When which cylinder fires: as the job sheet states, else in the usual order.
   *
   * @return empty where neither the engine nor its coils say how many cylinders there are
   */
  public Optional<FiringOrder> firing() {
    List<Coil> coils = observations.coils().stream().map(CoilTrack::coil).toList();
    try {
      FiringOrder order = FiringOrders.of(sheet.engine(), coils);
      boolean known = sheet.engine().cylinders().isPresent() || order.order().size() > 1;
      return known ? Optional.of(order) : Optional.empty();
    } catch (JobSheetException e) {
      throw new IllegalStateException("an examination holds a sheet that contradicts itself", e);
    }
  }

  /**
   * The same, with one more thing that was assumed.
   *
   * @param said one sentence
   * @return with it after the others
   */
  public Examination withAssumption(String said) {
    Roles more =
        new Roles(roles.crank, roles.tdc, roles.coils, (roles.assumption + " " + said).strip());
    return new Examination(sheet, more, observations, diagnosis, teeth);
  }

  /**
   * Which channel was taken for what, by name.
   *
   * @param crank the crank channel
   * @param tdc the channel that rises at top dead centre
   * @param coils channel name by coil name, in the order of the coils
   * @param assumption what was assumed, one sentence; empty text when the job sheet said all
   */
  public record Roles(
      String crank, Optional<String> tdc, Map<String, String> coils, String assumption) {

    /** Copies the map, keeping its order. */
    public Roles {
      coils = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(coils));
    }
  }
}
