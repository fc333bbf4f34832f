package toothmark.receiver;

import java.util.List;
import java.util.function.Supplier;
import toothmark.units.Say;
import toothmark.units.WordBook;

/**
 * An input circuit for a variable-reluctance sensor that a replay can try, with its setting.
 *
 * <p>Each is a class of circuit, not a maker's part; where a data sheet gave the figures it is
 * named.
 */
public final class Conditioner {

  private static final WordBook BOOK = new WordBook("toothmark.receiver.receiver");

  /** Of the reference: share of the last peak at which it arms. */
  static final double ARMING_SHARE = 1.0 / 3;

  /** Of the reference: least level at which it arms, V. */
  static final double FLOOR_VOLTS = 0.03;

  /** Of the reference: silence after which the floor alone counts, s. */
  static final double WATCHDOG_SECONDS = 0.085;

  private final String description;
  private final Supplier<InputStage> stage;

  private Conditioner(String description, Supplier<InputStage> stage) {
    this.description = description;
    this.stage = stage;
  }

  /**
   * The reference: armed at a third of the last peak, not below 0.03 V, watchdog 85 ms.
   *
   * @return the input of the reference receiver
   */
  public static Conditioner reference() {
    return adaptive(ARMING_SHARE, FLOOR_VOLTS, WATCHDOG_SECONDS);
  }

  /**
   * One of each class, with the figures of data sheets where there are any: the reference, a stored
   * peak, a comparator with hysteresis about the mean, and a plain threshold.
   *
   * @return the circuits that a report compares
   */
  public static List<Conditioner> usual() {
    return List.of(
        reference(),
        peakStore(0.8, 0.045, 0.1),
        threshold(0, 0.16),
        threshold(0, 0.02),
        threshold(0.3, 0));
  }

  /**
   * Armed at a share of the peak of the tooth before (figures of the reference after the MAX9924 to
   * MAX9927 data sheet, 19-4283 Rev 4).
   *
   * @param share of that peak, 0 to 1
   * @param floorVolts least level, V
   * @param watchdogSeconds silence after which the floor alone counts, s
   * @return that input
   */
  public static Conditioner adaptive(double share, double floorVolts, double watchdogSeconds) {
    return new Conditioner(
        BOOK.of("adaptive", Say.percent(share), volts(floorVolts), Say.seconds(watchdogSeconds)),
        () -> new AdaptiveZeroCrossing(share, floorVolts, watchdogSeconds));
  }

  /**
   * Armed at a share of a stored peak that decays (0.8 and 0.045 V are typical figures of the
   * LM1815 data sheet, SNOSBU8F).
   *
   * @param share of the stored peak, 0 to 1
   * @param floorVolts least level, V
   * @param decaySeconds time constant of the store, s
   * @return that input
   */
  public static Conditioner peakStore(double share, double floorVolts, double decaySeconds) {
    return new Conditioner(
        BOOK.of("peak-store", Say.percent(share), volts(floorVolts), Say.seconds(decaySeconds)),
        () -> new PeakStoreInput(share, floorVolts, decaySeconds));
  }

  /**
   * A comparator with fixed levels (the NCV1124 data sheet gives a threshold of 0 and a hysteresis
   * of 0.16 V to each side).
   *
   * @param thresholdVolts middle of the two levels, V from the mean
   * @param hysteresisVolts to each side, V; 0 for a plain threshold
   * @return that input
   */
  public static Conditioner threshold(double thresholdVolts, double hysteresisVolts) {
    return new Conditioner(
        BOOK.of("threshold", volts(thresholdVolts), volts(hysteresisVolts)),
        () ->
            new ThresholdInput(thresholdVolts + hysteresisVolts, thresholdVolts - hysteresisVolts));
  }

  private static String volts(double volts) {
    return Say.number(volts, 2) + Say.THIN + "V";
  }

  /**
   * What it is, with its setting.
   *
   * @return a phrase such as {@code threshold 0.00 V ± 0.16 V}
   */
  public String description() {
    return description;
  }

  InputStage newStage() {
    return stage.get();
  }
}
