package toothmark.timing;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;

/**
 * An ignition table: the advance that a controller commands by speed and load.
 *
 * <p>Between its columns and rows it is interpolated bilinearly; beyond them its edge is held.
 *
 * @param file where it was read
 * @param rpms speeds of its columns, rev/min, rising, two or more
 * @param loads loads of its rows, rising, two or more, in whatever unit the controller has
 * @param degrees for each load the advance at each speed, degrees before TDC
 */
public record IgnitionTable(
    Path file, List<Double> rpms, List<Double> loads, List<List<Double>> degrees) {

  /**
   * Copies and checks the lists.
   *
   * @throws IllegalArgumentException if an axis is too short or does not rise, or a row is not as
   *     long as the speeds
   */
  public IgnitionTable {
    rpms = List.copyOf(rpms);
    loads = List.copyOf(loads);
    degrees = degrees.stream().map(List::copyOf).toList();
    if (!rises(rpms) || !rises(loads)) {
      throw new IllegalArgumentException(
          "an ignition table needs two or more speeds and loads that rise, got speeds "
              + rpms
              + " and loads "
              + loads);
    }
    int columns = rpms.size();
    if (degrees.size() != loads.size() || degrees.stream().anyMatch(r -> r.size() != columns)) {
      throw new IllegalArgumentException(
          "an ignition table needs one advance for each speed and load, got " + degrees);
    }
  }

  private static boolean rises(List<Double> axis) {
    for (int i = 1; i < axis.size(); i++) {
      if (!(axis.get(i) > axis.get(i - 1))) {
        return false;
      }
    }
    return axis.size() > 1;
  }

  /**
   * The advance at a speed and load.
   *
   * @param rpm speed, rev/min
   * @param load in the unit of the table's loads
   * @return degrees before TDC
   */
  public double advance(double rpm, double load) {
    double at = position(loads, load);
    int row = (int) Math.min(at, loads.size() - 2);
    double below = along(degrees.get(row), rpm);
    return below + (at - row) * (along(degrees.get(row + 1), rpm) - below);
  }

  /**
   * Whether a speed is beyond the table's, so that its edge is held.
   *
   * @param rpm rev/min
   * @return true outside its first and last column
   */
  public boolean isBeyondSpeeds(double rpm) {
    return isBeyond(rpms, rpm);
  }

  /**
   * Whether a load is beyond the table's, so that its edge is held.
   *
   * @param load in the unit of the table's loads
   * @return true outside its first and last row
   */
  public boolean isBeyondLoads(double load) {
    return isBeyond(loads, load);
  }

  private static boolean isBeyond(List<Double> axis, double value) {
    return value < axis.get(0) || value > axis.get(axis.size() - 1);
  }

  private double along(List<Double> row, double rpm) {
    double at = position(rpms, rpm);
    int column = (int) Math.min(at, rpms.size() - 2);
    return row.get(column) + (at - column) * (row.get(column + 1) - row.get(column));
  }

  /** Where a value lies along an axis, in steps from its first; held at the ends. */
  private static double position(List<Double> axis, double value) {
    int i = Collections.binarySearch(axis, value);
    if (i >= 0) {
      return i;
    }
    int above = -i - 1;
    if (above == 0 || above == axis.size()) {
      return Math.min(above, axis.size() - 1);
    }
    double below = axis.get(above - 1);
    return above - 1 + (value - below) / (axis.get(above) - below);
  }
}
