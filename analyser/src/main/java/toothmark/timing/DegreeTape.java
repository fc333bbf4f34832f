package toothmark.timing;

import java.util.ArrayList;
import java.util.List;

/**
 * A tape with degree marks to wrap round a pulley or damper.
 *
 * @param diameterMillimetres diameter where the marks lie: pulley and twice the tape's thickness,
 *     mm
 * @param fromDegrees lowest degree marked; negative after TDC
 * @param toDegrees highest degree marked
 */
public record DegreeTape(double diameterMillimetres, int fromDegrees, int toDegrees) {

  private static final int LONG_EVERY = 10;
  private static final int MIDDLE_EVERY = 5;

  /**
   * Checks diameter and range.
   *
   * @throws IllegalArgumentException if the diameter is not positive, or the range is empty or more
   *     than a turn
   */
  public DegreeTape {
    if (!(diameterMillimetres > 0) || toDegrees <= fromDegrees || toDegrees - fromDegrees > 360) {
      throw new IllegalArgumentException(
          "a degree tape needs a positive diameter and a range of up to 360 degrees, got "
              + diameterMillimetres
              + " mm from "
              + fromDegrees
              + " to "
              + toDegrees);
    }
  }

  /** How long a mark is drawn. */
  public enum Length {
    /** Each tenth degree, with its number. */
    LONG,
    /** Each fifth degree. */
    MIDDLE,
    /** Each other degree. */
    SHORT
  }

  /**
   * A mark.
   *
   * @param degrees what it stands for, BTDC
   * @param millimetres where it lies, from the lowest mark, mm
   * @param length how long it is drawn
   */
  public record Mark(int degrees, double millimetres, Length length) {}

  /**
   * Arc of one degree.
   *
   * @return mm
   */
  public double millimetresPerDegree() {
    return Math.PI * diameterMillimetres / 360;
  }

  /**
   * Length from the lowest mark to the highest.
   *
   * @return mm
   */
  public double lengthMillimetres() {
    return (toDegrees - fromDegrees) * millimetresPerDegree();
  }

  /**
   * All marks.
   *
   * @return one each degree, rising
   */
  public List<Mark> marks() {
    List<Mark> marks = new ArrayList<>();
    for (int d = fromDegrees; d <= toDegrees; d++) {
      Length length =
          d % LONG_EVERY == 0 ? Length.LONG : d % MIDDLE_EVERY == 0 ? Length.MIDDLE : Length.SHORT;
      marks.add(new Mark(d, (d - fromDegrees) * millimetresPerDegree(), length));
    }
    return marks;
  }
}
