package toothmark.timing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a capture shows of ignition timing.
 *
 * @param reference what advance is counted from
 * @param alignment of the wheel; empty when nothing shows top dead centre
 * @param unused what other sources of top dead centre say, from the best to the least trusted
 * @param sparks every spark of every coil, in time order
 * @param coils one for each coil with a known advance
 * @param sequence whether the coils fired in their order; empty where that cannot be seen
 * @param bands by speed, rising; empty when no advance is known
 * @param gap the fit of the gap; empty when there is no commanded advance or too few sparks
 * @param limiters the limiters at work
 * @param log how the controller log was matched; empty without a log
 * @param table how an ignition table was used; empty without one
 */
public record Timing(
    Reference reference,
    Optional<Alignment> alignment,
    List<TdcEvidence> unused,
    List<SparkTiming> sparks,
    List<CoilTiming> coils,
    Optional<FiringSequence> sequence,
    List<SpeedBand> bands,
    Optional<GapFit> gap,
    List<Limiter> limiters,
    Optional<LogMatch> log,
    Optional<TableUse> table) {

  /** Copies the lists. */
  public Timing {
    unused = List.copyOf(unused);
    sparks = List.copyOf(sparks);
    coils = List.copyOf(coils);
    bands = List.copyOf(bands);
    limiters = List.copyOf(limiters);
  }

  /**
   * How far the wheel seems to stand off the angle that the controller is told.
   *
   * @return degrees, positive where sparks come advanced: by top dead centre, else by the sparks;
   *     empty when neither shows it
   */
  public OptionalDouble wheelOffDegrees() {
    return alignment
        .flatMap(Alignment::errorDegrees)
        .or(() -> gap.map(GapFit::offsetDegrees))
        .map(m -> OptionalDouble.of(m.value()))
        .orElse(OptionalDouble.empty());
  }

  /** What advance is counted from. */
  public enum Reference {
    /** Top dead centre as measured. */
    MEASURED,
    /** The tooth 1 angle that the controller is told. */
    NOMINAL,
    /** Nothing is known of top dead centre; there is no advance. */
    UNKNOWN
  }
}
