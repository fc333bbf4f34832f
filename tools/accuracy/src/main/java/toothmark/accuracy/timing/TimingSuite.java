package toothmark.accuracy.timing;

import java.util.List;
import toothmark.accuracy.Suite;

/** Offset, delay, shapes. */
public final class TimingSuite {

  private TimingSuite() {}

  /**
   * The suite.
   *
   * @return its one study
   */
  public static Suite suite() {
    return new Suite(
        "timing",
        "Timing",
        "How far the sparks are from where the controller meant them, as an angle that is always there (offset) and a time that is (delay), through the whole chain from the waves on.",
        List.of(new SweepStudy()));
  }
}
