package toothmark.findings;

import toothmark.timing.GapShape;

/** The crank signal passes through a slow filter. */
final class FilterLagCheck extends GapShapeCheck {

  FilterLagCheck() {
    super("filter-lag", GapShape.FILTER_LAG, "The crank signal passes through a slow filter.");
  }

  @Override
  Draft describe(Draft draft) {
    return draft
        .saw(
            "The advance gap grows with speed at first and then levels off, as a filter's lag does.")
        .ratherThan("A delay grows in a straight line; this one bends over.")
        .next(
            "Look for a capacitor or a long shielded lead on the sensor's wires, and for a filter setting of the controller.")
        .caution("Do not take a filter out without checking for noise at cranking.");
  }
}
