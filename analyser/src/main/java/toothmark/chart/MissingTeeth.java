package toothmark.chart;

import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** Teeth that are missing in a row, which are one event to whoever looks for its cause. */
public final class MissingTeeth {

  private MissingTeeth() {}

  /**
   * How many teeth are missing in a row, from one on.
   *
   * @param teeth the events of a decoding
   * @param index of the one that may start the row
   * @return 0 when it is not missing, or when the event before it is too
   */
  public static int inRow(ToothEvents teeth, int index) {
    if (index > 0 && teeth.kind(index - 1) == ToothKind.MISSING) {
      return 0;
    }
    int n = 0;
    while (index + n < teeth.size() && teeth.kind(index + n) == ToothKind.MISSING) {
      n++;
    }
    return n;
  }
}
