package toothmark.desktop;

import toothmark.units.Interval;

/**
 * The part of a capture that is in view.
 *
 * @param whole all that there is, s
 * @param shown what is in view, s; within the whole
 */
record TimeView(Interval whole, Interval shown) {

  /** The shortest view, s: below it neighbouring instants are not told apart. */
  private static final double SHORTEST_SECONDS = 1e-6;

  /** How many times as long as the view a picture beside it may be. */
  private static final double MOST_BESIDE = 40;

  TimeView {
    double length =
        Math.max(
            Math.min(SHORTEST_SECONDS, whole.seconds()),
            Math.min(whole.seconds(), shown.seconds()));
    double start =
        Math.max(
            whole.startInclusive(),
            Math.min(whole.endExclusive() - length, shown.startInclusive()));
    shown = new Interval(start, Math.max(start, start + length));
  }

  static TimeView all(Interval whole) {
    return new TimeView(whole, whole);
  }

  /** Shows less by a factor below 1 and more by one above, an instant keeping its place. */
  TimeView zoomed(double factor, double aboutSeconds) {
    double left = (aboutSeconds - shown.startInclusive()) * factor;
    double right = (shown.endExclusive() - aboutSeconds) * factor;
    if (left + right < SHORTEST_SECONDS && factor < 1) {
      return this;
    }
    return new TimeView(whole, new Interval(aboutSeconds - left, aboutSeconds + right));
  }

  /** Moves by a share of what is in view; to the right where positive. */
  TimeView panned(double share) {
    return movedBy(share * shown.seconds());
  }

  TimeView movedBy(double seconds) {
    return new TimeView(
        whole, new Interval(shown.startInclusive() + seconds, shown.endExclusive() + seconds));
  }

  /** Moves and zooms as another view did. */
  TimeView movedAs(TimeView from, TimeView to) {
    double half = shown.seconds() * to.shown.seconds() / from.shown.seconds() / 2;
    double at = middle() + to.middle() - from.middle();
    return to.isAll() ? all(whole) : showing(new Interval(at - half, at + half));
  }

  /** Shows as much as now, around an instant. */
  TimeView around(double timeSeconds) {
    return movedBy(timeSeconds - middle());
  }

  TimeView showing(Interval part) {
    return new TimeView(whole, part);
  }

  /**
   * What a picture beside it shows: all that is in view, and not so much more that this could
   * hardly be seen in it.
   *
   * @param now what the picture shows now; kept where that will do
   */
  Interval beside(Interval now) {
    if (isAll()) {
      return whole;
    }
    if (now.seconds() > MOST_BESIDE * shown.seconds()) {
      double half = MOST_BESIDE * shown.seconds() / 4;
      return showing(new Interval(middle() - half, middle() + half)).shown;
    }
    if (now.seconds() < shown.seconds()) {
      return shown;
    }
    double left = Math.min(0, shown.startInclusive() - now.startInclusive());
    double right = Math.max(0, shown.endExclusive() - now.endExclusive());
    double by = left < 0 ? left : right;
    return by == 0
        ? now
        : showing(new Interval(now.startInclusive() + by, now.endExclusive() + by)).shown;
  }

  double middle() {
    return (shown.startInclusive() + shown.endExclusive()) / 2;
  }

  boolean isAll() {
    return shown.equals(whole);
  }
}
