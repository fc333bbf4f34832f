package toothmark.edges;

/** What a channel looks like before anybody says what it is. */
public enum SignalShape {
  /** Nothing but noise, or nothing at all. */
  QUIET,
  /** It wanders between its extremes, as a variable-reluctance sensor or a clamp does. */
  WAVE,
  /** It stands at two levels, each for a fair share of the time. */
  TWO_LEVEL,
  /** It stands at one of two levels nearly all the time, as a mark once a turn does. */
  PULSE_TRAIN
}
