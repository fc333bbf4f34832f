package toothmark.simulator;

import java.util.BitSet;

/** Which firing events the limiter has cut; event {@code e} has its TDC at e firing intervals. */
final class FiredEvents {
  private final BitSet cut = new BitSet();

  void cut(long event) {
    cut.set(index(event));
  }

  boolean isCut(long event) {
    return cut.get(index(event));
  }

  private static int index(long event) {
    return (int) (event >= 0 ? 2 * event : -2 * event - 1);
  }
}
