package toothmark.receiver;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Which of many pairs of fixed levels would have followed a record without a loss.
 *
 * @param thresholdsVolts middles of the two levels, V from the record's mean, rising
 * @param hysteresesVolts to each side, V, rising
 * @param cells every pair, thresholds in the outer loop
 */
public record LevelWindow(
    List<Double> thresholdsVolts, List<Double> hysteresesVolts, List<Cell> cells) {

  /** Copies the lists. */
  public LevelWindow {
    thresholdsVolts = List.copyOf(thresholdsVolts);
    hysteresesVolts = List.copyOf(hysteresesVolts);
    cells = List.copyOf(cells);
  }

  /**
   * What a pair would have cost.
   *
   * @param teethLost teeth without an edge near
   * @param straysAdmitted edges without a tooth near
   * @param losses of count
   * @param clear whether it would have heard nearly every tooth and never lost its count
   */
  public record Cell(int teethLost, int straysAdmitted, int losses, boolean clear) {}

  /**
   * One pair.
   *
   * @param threshold index of its threshold
   * @param hysteresis index of its hysteresis
   * @return what it would have cost
   */
  public Cell cell(int threshold, int hysteresis) {
    return cells.get(threshold * hysteresesVolts.size() + hysteresis);
  }

  /**
   * The hystereses that are clear at a threshold.
   *
   * @param threshold index of the threshold
   * @return their indices, rising
   */
  public List<Integer> clearAt(int threshold) {
    return IntStream.range(0, hysteresesVolts.size())
        .filter(h -> cell(threshold, h).clear())
        .boxed()
        .toList();
  }
}
