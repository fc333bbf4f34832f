package toothmark.findings;

/**
 * A damped oscillator that the engine pushes 2, 4 and 6 times a turn: it swings by 0.6 degrees each
 * way at its resonance, whose quality is 20.
 *
 * @param hertz its own frequency; 0 for one that is not there
 */
record Ringing(double hertz) {

  private static final double QUALITY = 20;
  private static final double WIDEST_DEGREES = 0.6;

  /**
   * Steady swing, by 1 / (1 - r² + i r / Q) with r the frequency over its own (textbooks of
   * vibration, from memory).
   */
  double degrees(double rpm, double crankDegrees) {
    double x = 0;
    for (int order = 2; order <= 6 && hertz > 0; order += 2) {
      double r = order * rpm / 60 / hertz;
      double stiff = 1 - r * r;
      double drag = r / QUALITY;
      double phase = Math.toRadians(order * crankDegrees);
      double in = stiff * Math.cos(phase) + drag * Math.sin(phase);
      x += WIDEST_DEGREES / QUALITY * in / (stiff * stiff + drag * drag);
    }
    return x;
  }
}
