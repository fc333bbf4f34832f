package toothmark.simulator;

import java.util.List;

/**
 * Which signals are recorded beside the crank's.
 *
 * @param coils indexes of the coils, in the order of the channels
 * @param tdc whether a mark at TDC of cylinder 1 is recorded
 */
public record Hookup(List<Integer> coils, Tdc tdc) {
  /** A mark at TDC. */
  public enum Tdc {
    /** A pulse that rises at TDC of cylinder 1, every turn. */
    RECORDED,
    /** No such channel. */
    ABSENT
  }

  /** Copies the list. */
  public Hookup {
    coils = List.copyOf(coils);
  }
}
