package toothmark.findings;

import toothmark.timing.GapShape;

/** The sensor's signal passes its threshold late at low speed. */
final class ThresholdLagCheck extends GapShapeCheck {

  ThresholdLagCheck() {
    super(
        "threshold-lag",
        GapShape.THRESHOLD,
        "The sensor's signal passes its threshold late at low speed.");
  }

  @Override
  Draft describe(Draft draft) {
    return draft
        .saw("The advance gap is largest at low speed and fades as the signal grows.")
        .ratherThan("A delay would grow with speed; this shrinks.")
        .next("Check the air gap and the threshold of the sensor's input stage.")
        .caution("A lower threshold lets noise in: look for stray edges while cranking.");
  }
}
