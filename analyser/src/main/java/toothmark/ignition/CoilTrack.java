package toothmark.ignition;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.units.CrankAngle;

/**
 * What one coil did in a capture.
 *
 * @param coil the coil
 * @param chargingLevel level of the channel that means charging; {@link ChargingLevel#LOW} for a
 *     primary voltage
 * @param firesEveryDegrees angle from one spark due to the next, degrees (360 for a wasted-spark
 *     pair); the mean where the coil fires at uneven angles
 * @param sparks in time order
 * @param absent places where it was due and did not fire, in time order, between its first spark
 *     (or that of the other coils) and its last
 * @param dwell over the sparks whose start of charging is known; empty when there is none
 * @param burn how long the sparks burnt, over those of which a primary voltage shows it; empty when
 *     there is none
 * @param charge the form of its charges; empty unless a current clamp shows it
 */
public record CoilTrack(
    Coil coil,
    ChargingLevel chargingLevel,
    double firesEveryDegrees,
    List<Spark> sparks,
    List<AbsentSpark> absent,
    Optional<MeanTime> dwell,
    Optional<MeanTime> burn,
    Optional<ChargeCurrent> charge) {

  /** Copies the lists. */
  public CoilTrack {
    sparks = List.copyOf(sparks);
    absent = List.copyOf(absent);
  }

  /**
   * Duty at a spark: for which share of the time from one spark due to the next the coil charged.
   *
   * @param spark one of the coil's
   * @return 0 to 1, at the speed of the spark; empty where the charge or the speed is not known, or
   *     the spark is a repeated one
   */
  public OptionalDouble duty(Spark spark) {
    OptionalDouble dwell = spark.dwellSeconds();
    if (dwell.isEmpty() || spark.crank().isEmpty() || spark.turn() != Spark.Turn.FIRST) {
      return OptionalDouble.empty();
    }
    double turned = CrankAngle.turned(spark.crank().get().rpm(), dwell.getAsDouble());
    return OptionalDouble.of(turned / firesEveryDegrees);
  }

  /**
   * Duties of all sparks of which it is known.
   *
   * @return least, mean and most
   */
  public DoubleSummaryStatistics duties() {
    return sparks.stream().flatMapToDouble(s -> duty(s).stream()).summaryStatistics();
  }

  /**
   * How many sparks were further ones close behind the first.
   *
   * @return 0 or more
   */
  public int repeated() {
    return (int) sparks.stream().filter(s -> s.turn() == Spark.Turn.REPEATED).count();
  }
}
