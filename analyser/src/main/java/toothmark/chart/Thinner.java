package toothmark.chart;

/**
 * Thins a line to the columns of a picture: of each column the first, lowest, highest and last
 * point are kept, which draws the same picture.
 *
 * <p>Method M4 of Jugel, Jerzak, Hackenbroich and Markl, Proc. VLDB Endowment 7 (2014) 797-808, doi
 * 10.14778/2732951.2732953.
 */
final class Thinner {

  private final double from;
  private final double width;
  private final Curve.Line line;
  private final double[] xs = new double[4];
  private final double[] ys = new double[4];
  private final int[] order = new int[4];
  private long column;
  private int held;
  private boolean broken = true;

  /** Starts with columns of a width from a place on. */
  Thinner(double from, double width, Curve.Line line) {
    this.from = from;
    this.width = width;
    this.line = line;
  }

  /** Takes the next point; they come in order of x. */
  void add(double x, double y) {
    long at = (long) Math.floor((x - from) / width);
    if (held > 0 && at != column) {
      flush();
    }
    column = at;
    if (held == 0) {
      for (int i = 0; i < 4; i++) {
        put(i, x, y);
      }
      held = 1;
      return;
    }
    held++;
    if (y < ys[1]) {
      put(1, x, y);
    }
    if (y > ys[2]) {
      put(2, x, y);
    }
    put(3, x, y);
  }

  /** Leaves a gap before the next point. */
  void interrupt() {
    flush();
    broken = true;
  }

  /** Hands over what is held. */
  void flush() {
    if (held == 0) {
      return;
    }
    int early = order[1] <= order[2] ? 1 : 2;
    emit(0, -1);
    emit(early, 0);
    emit(3 - early, early);
    emit(3, 3 - early);
    held = 0;
  }

  private void put(int i, double x, double y) {
    xs[i] = x;
    ys[i] = y;
    order[i] = held;
  }

  private void emit(int i, int before) {
    if (before >= 0 && order[i] == order[before]) {
      return;
    }
    if (broken) {
      line.moveTo(xs[i], ys[i]);
      broken = false;
    } else {
      line.lineTo(xs[i], ys[i]);
    }
  }
}
