package toothmark.report;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.ignition.ChargeCurrent;
import toothmark.receiver.SyncLoss;
import toothmark.timing.GapShape;
import toothmark.timing.IgnitionTable;
import toothmark.timing.LogMatch;
import toothmark.timing.TableUse;
import toothmark.timing.Timing;
import toothmark.units.Measured;
import toothmark.units.PlainNumber;
import toothmark.units.Say;

/** Words of the results that stand for enum values. */
final class Wording {

  private Wording() {}

  /** The phase of a sync loss, as in the tables. */
  static String phase(SyncLoss.Phase phase) {
    return lower(phase);
  }

  /** How the gap changes with speed. */
  static String of(GapShape shape) {
    return switch (shape) {
      case CONSTANT -> "the same at all speeds";
      case DELAY -> "in proportion, as of a fixed delay";
      case FILTER_LAG -> "less and less, as of a filter";
      case THRESHOLD -> "largest at low speed, as of a threshold";
      case STEP -> "a step at one speed";
    };
  }

  /** What tells top dead centre, as in the data; empty where nothing does. */
  static Optional<String> source(Timing timing) {
    Optional<String> nominal =
        timing.reference() == Timing.Reference.NOMINAL
            ? Optional.of("nominal-setting")
            : Optional.empty();
    return timing.alignment().map(a -> a.source().label()).or(() -> nominal);
  }

  /**
   * What an advance is counted from, where that is not top dead centre; empty where it is, or where
   * there is no advance.
   */
  static String against(Timing.Reference reference) {
    return reference == Timing.Reference.NOMINAL
        ? "against the setting that the controller is told, not against top dead centre"
        : "";
  }

  /** The form of a coil's charges. */
  static String of(ChargeCurrent charge) {
    String at =
        Say.seconds(charge.until().meanSeconds())
            + " ("
            + Say.percent(charge.shareOfDwell())
            + " of the charge)";
    String form =
        switch (charge.form()) {
          case RAMP -> "its current ramps up until it breaks";
          case LIMITED -> "its current is limited from " + at + " on";
          case KNEE -> "its current turns up, as of a saturated core, from " + at + " on";
        };
    return form + ", in " + charge.until().sparks() + " of " + charge.charges() + " charges";
  }

  /** How a controller's log lies in the capture. */
  static String of(LogMatch log) {
    String records =
        "speeds correlate "
            + Say.number(log.correlation(), 3)
            + " and differ by "
            + Say.rpm(log.speedDifferenceRpm());
    String clock = log.shiftSeconds().map(Wording::clock).orElse("its clock cannot be told");
    String drift =
        log.driftPartsPerMillion() == 0
            ? ""
            : " and runs "
                + Say.number(Math.abs(log.driftPartsPerMillion()), 0)
                + (log.driftPartsPerMillion() > 0 ? " ppm fast" : " ppm slow");
    return switch (log.outcome()) {
      case MATCHED -> clock + drift + "; " + records;
      case BY_SPEED -> clock + ", advance is taken by speed; " + records;
      case REFUSED -> "refused: it does not fit the capture; " + records;
    };
  }

  private static String clock(Measured shift) {
    Measured apart = new Measured(Math.abs(shift.value()), shift.standardUncertainty());
    return "its clock is "
        + Say.interval(apart, Say.THIN + "s")
        + (shift.value() < 0 ? " ahead of" : " behind")
        + " the capture's";
  }

  /** Which ignition table was read, at which load, and where its edge was held. */
  static String of(TableUse use) {
    IgnitionTable t = use.table();
    String at =
        use.statedLoad().isPresent()
            ? "at load " + PlainNumber.significant(use.statedLoad().getAsDouble())
            : "at the logged loads";
    return t.file().getFileName()
        + " "
        + at
        + (use.beyondSpeeds() + use.beyondLoads() == 0 ? ", which it covers" : "")
        + held(use.beyondSpeeds(), use.sparks(), "speeds", t.rpms(), Say.THIN + "rev/min")
        + held(use.beyondLoads(), use.sparks(), "loads", t.loads(), "");
  }

  private static String held(int beyond, int sparks, String what, List<Double> axis, String unit) {
    return beyond == 0
        ? ""
        : "; its edge was held for "
            + Say.count(beyond)
            + " of "
            + Say.count(sparks)
            + " sparks outside its "
            + what
            + ", "
            + PlainNumber.significant(axis.get(0))
            + " to "
            + PlainNumber.significant(axis.get(axis.size() - 1))
            + unit;
  }

  /** An enum value in lower case. */
  static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
