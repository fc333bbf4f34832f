package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.ignition.ChargeCurrent;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.SpeedTrace;
import toothmark.timing.GapShape;
import toothmark.timing.IgnitionTable;
import toothmark.timing.LogMatch;
import toothmark.timing.TableUse;
import toothmark.timing.TdcSource;
import toothmark.timing.Timing;
import toothmark.units.Measured;
import toothmark.units.PlainNumber;
import toothmark.units.Say;
import toothmark.units.WordBook;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelIdentification;

/** The words of reports, and those that stand for enum values. */
final class Wording {

  private static final WordBook BOOK = new WordBook("toothmark.report.report");

  private Wording() {}

  static String of(String key, Object... values) {
    return BOOK.of(key, values);
  }

  /** A phrase that may be there. */
  static Optional<String> find(String key) {
    return BOOK.find(key);
  }

  /** A phrase about a number of things. */
  static String count(long n, String key, Object... more) {
    return BOOK.count(n, key, more);
  }

  /** How sure a conclusion is; never quite, since the models behind it are not. */
  static String sure(double probability) {
    return probability > 0.99 ? of("sure.most") : of("sure.share", Say.percent(probability));
  }

  /** Which wheel it is; how many even teeth make a turn cannot be seen. */
  static String of(WheelIdentification wheel) {
    return wheel.pattern().hasReference()
        ? of("wheel", wheel.pattern(), sure(wheel.confidence()))
        : of("wheel.even", wheel.pattern());
  }

  /** How fast the crank turned. */
  static String speed(SpeedTrace speed) {
    return of(
        "speed",
        Say.number(speed.minRpm(), 0),
        Say.rpm(speed.maxRpm()),
        Say.number(speed.meanRpm(), 0));
  }

  /** How many teeth were seen, and how many not. */
  static String of(ToothEvents teeth) {
    return of(
        "teeth",
        Say.count(teeth.count(ToothKind.SEEN)),
        Say.count(teeth.count(ToothKind.MISSING)),
        Say.count(teeth.count(ToothKind.STRAY)));
  }

  /** What tells top dead centre. */
  static String of(TdcSource source) {
    return of("source." + source.label());
  }

  /**
   * How much a finding matters.
   *
   * @param label as in the results, which may be those of another version
   * @return in lower case
   */
  static String severity(String label) {
    return find("severity." + label).orElse(label);
  }

  /** Words as the beginning of a line. */
  static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** The phase of a sync loss, as in the tables. */
  static String phase(SyncLoss.Phase phase) {
    return lower(phase);
  }

  /** How the gap changes with speed. */
  static String of(GapShape shape) {
    return of("shape." + shape);
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
    return reference == Timing.Reference.NOMINAL ? of("against") : "";
  }

  /** The form of a coil's charges. */
  static String of(ChargeCurrent charge) {
    return of(
        "charge." + charge.form(),
        charge.until().sparks(),
        charge.charges(),
        Say.seconds(charge.until().meanSeconds()),
        Say.percent(charge.shareOfDwell()));
  }

  /** How a controller's log lies in the capture. */
  static String of(LogMatch log) {
    String records =
        of("log.records", Say.number(log.correlation(), 3), Say.rpm(log.speedDifferenceRpm()));
    return of("log." + log.outcome(), clock(log), records);
  }

  private static String clock(LogMatch log) {
    if (log.shiftSeconds().isEmpty()) {
      return of("log.clock.none");
    }
    Measured shift = log.shiftSeconds().get();
    Measured apart = new Measured(Math.abs(shift.value()), shift.standardUncertainty());
    double drift = log.driftPartsPerMillion();
    String clock =
        of(
            shift.value() < 0 ? "log.clock.ahead" : "log.clock.behind",
            Say.interval(apart, Say.THIN + "s"));
    return drift == 0
        ? clock
        : of(
            drift > 0 ? "log.clock.fast" : "log.clock.slow", clock, Say.number(Math.abs(drift), 0));
  }

  /** Which ignition table was read, at which load, and where its edge was held. */
  static String of(TableUse use) {
    IgnitionTable t = use.table();
    String file = t.file().getFileName().toString();
    List<String> said = new ArrayList<>();
    said.add(
        use.statedLoad().isPresent()
            ? of("table.load", file, PlainNumber.significant(use.statedLoad().getAsDouble()))
            : of("table.logged", file));
    held("table.speeds", use.beyondSpeeds(), use.sparks(), t.rpms()).ifPresent(said::add);
    held("table.loads", use.beyondLoads(), use.sparks(), t.loads()).ifPresent(said::add);
    return said.size() == 1 ? of("table.covers", said.get(0)) : String.join("; ", said);
  }

  private static Optional<String> held(String key, int beyond, int sparks, List<Double> axis) {
    return beyond == 0
        ? Optional.empty()
        : Optional.of(
            of(
                key,
                Say.count(beyond),
                Say.count(sparks),
                PlainNumber.significant(axis.get(0)),
                PlainNumber.significant(axis.get(axis.size() - 1))));
  }

  /** An enum value in lower case. */
  static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
