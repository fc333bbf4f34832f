package toothmark.capture.text;

/**
 * How one column is read.
 *
 * @param name as written, without the unit; empty when there is none
 * @param unit {@link Unit#NONE} when not stated
 * @param kind how the cells are written
 * @param role what the column is for
 */
record ColumnPlan(String name, Unit unit, ColumnKind kind, Role role) {

  ColumnPlan with(Role other) {
    return new ColumnPlan(name, unit, kind, other);
  }

  ColumnPlan with(Unit other) {
    return new ColumnPlan(name, other, kind, role);
  }

  boolean isStored() {
    return role != Role.LEFT_OUT && kind.isStored();
  }
}
