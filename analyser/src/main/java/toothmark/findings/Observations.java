package toothmark.findings;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.capture.Capture;
import toothmark.edges.CrankEdges;
import toothmark.edges.Disturbances;
import toothmark.edges.EdgeDirection;
import toothmark.ignition.CoilTrack;
import toothmark.receiver.ReceiverTrace;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.Alignment;
import toothmark.timing.Timing;
import toothmark.wheel.WheelPattern;

/**
 * Everything that the earlier stages found.
 *
 * @param capture what was recorded
 * @param crankUnit unit of the crank channel; empty text where the file names none
 * @param stated what the user states
 * @param edges edges of the crank channel
 * @param disturbances bursts and spikes on the crank channel
 * @param crank the decoding; empty when the signal could not be decoded
 * @param undecodable why it could not, one sentence; empty text when it could
 * @param receiver what the reference receiver made of the signal
 * @param coils what each coil did
 * @param timing alignment, advance and limiters
 */
public record Observations(
    Capture capture,
    String crankUnit,
    Stated stated,
    CrankEdges edges,
    Disturbances disturbances,
    Optional<DecodedCrank> crank,
    String undecodable,
    ReceiverTrace receiver,
    List<CoilTrack> coils,
    Timing timing) {

  /** Copies the list. */
  public Observations {
    coils = List.copyOf(coils);
  }

  /** Whether heights of a wave mean volts. */
  enum Scale {
    /** They do; also taken for so where a file names no unit of numbers with decimals. */
    VOLTS,
    /** Shares of a sound card's full scale, or counts of a converter, whose worth is not known. */
    UNKNOWN
  }

  /** That a check needs volts, and why heights do not mean them. */
  Outcome noVolts() {
    boolean counts = crankUnit.equals("count");
    return counts ? Outcome.cannotRun("no-worth") : Outcome.cannotRun("no-volts");
  }

  /** What the heights of the crank's wave mean. */
  Scale scale() {
    return crankUnit.equals("FS") || crankUnit.equals("count") ? Scale.UNKNOWN : Scale.VOLTS;
  }

  /**
   * What the user states, as far as checks need it.
   *
   * @param cylinders number of cylinders; 0 when not stated
   * @param pattern wheel that the controller is told
   * @param sensorCircleMillimetres diameter at the tooth tips, mm
   * @param timedEdge edge that the controller times; falling when not stated
   * @param edgeStated whether the job sheet names the edge
   * @param firing when which cylinder fires
   */
  public record Stated(
      int cylinders,
      Optional<WheelPattern> pattern,
      OptionalDouble sensorCircleMillimetres,
      EdgeDirection timedEdge,
      Statement edgeStated,
      Firing firing) {}

  /**
   * When which cylinder fires, by the job sheet.
   *
   * @param order cylinder numbers; empty when not stated or uneven
   * @param statement whether the job sheet states the order, even or not
   * @param tooth1BtdcDegrees angle from tooth 1 to top dead centre of cylinder 1, as the controller
   *     is told
   */
  public record Firing(List<Integer> order, Statement statement, OptionalDouble tooth1BtdcDegrees) {

    /** Nothing is stated. */
    public static final Firing NOTHING =
        new Firing(List.of(), Statement.ASSUMED, OptionalDouble.empty());

    /** Copies the list. */
    public Firing {
      order = List.copyOf(order);
    }
  }

  /** Top dead centre of cylinder 1, degrees after tooth 1: as measured, else as stated. */
  OptionalDouble topDeadCentreDegrees() {
    return timing
        .alignment()
        .flatMap(Alignment::tooth1BtdcDegrees)
        .map(m -> OptionalDouble.of(m.value()))
        .orElse(stated.firing().tooth1BtdcDegrees());
  }

  /** Whether the job sheet says so. */
  public enum Statement {
    /** It does. */
    STATED,
    /** It does not. */
    ASSUMED
  }
}
