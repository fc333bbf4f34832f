package toothmark.receiver;

/** Counts what the edges of an input do, one by one: teeth found, strays, losses of count. */
final class EdgeTally {

  /** An edge this near to a tooth, as a share of the distance to its neighbour, is that tooth. */
  private static final double NEAR = 0.3;

  private final Follower follower;
  private final double[] teeth;
  private int tooth;
  private int found;
  private int edges;

  /**
   * Starts with no edge.
   *
   * @param wheel what the follower is told
   * @param toothTimes when teeth passed, s, rising; not copied
   */
  EdgeTally(FollowedWheel wheel, double[] toothTimes) {
    follower = new Follower(wheel);
    teeth = toothTimes;
  }

  /**
   * Takes the next edge; each is at most one tooth and each tooth has at most one edge.
   *
   * @return whether it is one
   */
  boolean add(double seconds) {
    edges++;
    follower.loses(seconds);
    while (tooth < teeth.length && seconds > teeth[tooth] + reach()) {
      tooth++;
    }
    boolean isTooth = tooth < teeth.length && seconds >= teeth[tooth] - reach();
    if (isTooth) {
      found++;
      tooth++;
    }
    return isTooth;
  }

  /** Index of the tooth that the last edge was, where it was one. */
  int lastTooth() {
    return tooth - 1;
  }

  private double reach() {
    double before = tooth > 0 ? teeth[tooth] - teeth[tooth - 1] : Double.POSITIVE_INFINITY;
    double after =
        tooth + 1 < teeth.length ? teeth[tooth + 1] - teeth[tooth] : Double.POSITIVE_INFINITY;
    return NEAR * Math.min(before, after);
  }

  int teethLost() {
    return teeth.length - found;
  }

  int strays() {
    return edges - found;
  }

  int losses() {
    return follower.losses();
  }
}
