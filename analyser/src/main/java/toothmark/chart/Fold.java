package toothmark.chart;

import toothmark.units.CrankAngle;

/** How much of the crank's turning a signal is laid over itself by. */
public enum Fold {
  /** One revolution: 360 degrees. */
  TURN(1),
  /** One cycle of a four-stroke engine: 720 degrees. */
  CYCLE(2);

  private final int turns;

  Fold(int turns) {
    this.turns = turns;
  }

  int turns() {
    return turns;
  }

  double degrees() {
    return turns * CrankAngle.REVOLUTION;
  }
}
