package toothmark.wheel;

/** The best way of reading all edges up to one, given that this one is a certain tooth. */
final class Survivor extends SpeedState {

  private static final double BURST_NATS = 9.0;
  private static final double BURST_SHARE = 0.5;

  final int edge;

  /** From 0. */
  final int tooth;

  /** The tooth before it on this way; null at a start. */
  Survivor from;

  /** Teeth further on than {@link #from}; 0 at a start or where the count was taken up anew. */
  int steps;

  /** Cost of the way so far, nats. */
  double cost;

  /** Cost of the edges since, all taken for strays, nats. */
  double strayNats;

  /** Cost of the way with all edges since taken for strays, as of the last edge closed, nats. */
  double pending;

  /** Fading sum of what was improbable on the way, nats. */
  double surprise;

  /** How far behind the best its best successor was. */
  double successor = Double.POSITIVE_INFINITY;

  /** Which walk through the ways passed here last, and where the way joins the best one. */
  int walk;

  Survivor joins;

  /** Whether no other way puts the crank in the same place at less cost. */
  boolean firstOfPhase;

  /** Logarithm of the probability of all ways that lead here. */
  double forward = Double.NEGATIVE_INFINITY;

  /** Logarithm of the probability of all ways that lead on from here. */
  double backward = Double.NEGATIVE_INFINITY;

  Survivor(int edge, int tooth) {
    this.edge = edge;
    this.tooth = tooth;
  }

  /** What it costs to take a row of edges, of this summed cost, for strays. */
  static double skip(double strayNats) {
    double burst = BURST_NATS + BURST_SHARE * strayNats;
    return strayNats < burst ? strayNats : burst;
  }
}
