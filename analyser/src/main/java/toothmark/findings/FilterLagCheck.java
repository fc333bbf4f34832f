package toothmark.findings;

import toothmark.timing.GapShape;

/** The crank signal passes through a slow filter. */
final class FilterLagCheck extends GapShapeCheck {

  FilterLagCheck() {
    super("filter-lag", GapShape.FILTER_LAG);
  }

  @Override
  Draft describe(Draft draft) {
    return draft.saw("levels-off").ratherThan("delay").caution("noise");
  }
}
