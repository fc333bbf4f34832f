package toothmark.capture.text;

import toothmark.capture.StatedColumn;

/**
 * How one column is read.
 *
 * @param name as written, without the unit; empty when there is none
 * @param unit {@link Unit#NONE} when not stated
 * @param kind how the cells are written
 * @param role what the column is for
 * @param stated what is stated of it beside the file's own words; name and unit hold it already
 */
record ColumnPlan(String name, Unit unit, ColumnKind kind, Role role, StatedColumn stated) {

  /** The plan of a column of which something is stated. */
  static ColumnPlan of(String name, Unit unit, ColumnKind kind, StatedColumn stated) {
    return new ColumnPlan(
        stated.name().orElse(name),
        stated.unit().map(Unit::stated).orElse(unit),
        kind,
        Role.VALUE,
        stated);
  }

  ColumnPlan with(Role other) {
    return new ColumnPlan(name, unit, kind, other, stated);
  }

  boolean isStored() {
    return role != Role.LEFT_OUT && kind.isStored();
  }

  /** Power of ten that is applied when the numbers are stored. */
  int shift() {
    return stated.isScaled() ? 0 : unit.power();
  }

  /** What a stored number is worth, in the base unit, where a scale or an offset is stated. */
  double value(double number) {
    return inBaseUnit(number * stated.scale().orElse(1) + stated.offset().orElse(0));
  }

  private double inBaseUnit(double value) {
    int power = unit.power() - shift();
    return power < 0 ? value / Math.pow(10, -power) : value * Math.pow(10, power);
  }
}
