package toothmark.timing;

/** How the gap between actual and commanded advance changes with speed. */
public enum GapShape {
  /** The same angle at all speeds: a wheel or a setting is off. */
  CONSTANT,
  /** In proportion to speed: the spark is late by one time. */
  DELAY,
  /** In proportion at first, then less: a filter of first order lags the signal. */
  FILTER_LAG,
  /** Large at low speed and fading as it rises: the sensor's signal passes a threshold late. */
  THRESHOLD,
  /** Two levels with a step at one speed. */
  STEP
}
