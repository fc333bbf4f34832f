package toothmark.findings;

/** The picture that proves a finding. */
public enum Picture {
  /** The waveform around an instant, its teeth labelled. */
  WAVEFORM,
  /** Tooth period over time. */
  TOOTH_PERIOD,
  /** Speed over time. */
  SPEED,
  /** Spacing and amplitude of each tooth around the wheel. */
  WHEEL,
  /** Sync losses, strays and lost teeth on the time line. */
  SYNC,
  /** Advance, actual and commanded, against speed. */
  ADVANCE,
  /** Where the wheel stands against the crank, over time. */
  ALIGNMENT,
  /** Dwell against speed. */
  DWELL,
  /** Order spectrum of the speed. */
  ORDERS
}
