package toothmark.ignition;

import java.util.function.Supplier;
import toothmark.capture.Signal;
import toothmark.edges.CrankEdges;
import toothmark.edges.LogicEdges;

/**
 * A coil and what was recorded of it.
 *
 * @param coil the coil
 * @param signal its channel
 * @param switching gives the edges of its channel as of one that switches, when asked
 */
public record CoilChannel(Coil coil, Signal signal, Supplier<CrankEdges> switching) {

  /**
   * A coil whose channel nobody has looked at yet.
   *
   * @param coil the coil
   * @param signal its channel
   */
  public CoilChannel(Coil coil, Signal signal) {
    this(coil, signal, () -> LogicEdges.detect(signal));
  }
}
