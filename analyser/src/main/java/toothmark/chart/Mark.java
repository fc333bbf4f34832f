package toothmark.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.List;

/** The shape that stands for a kind of event, the same in every picture. */
enum Mark {
  /** A tooth seen, or any plain point. */
  DOT,
  /** A tooth missing. */
  HOLLOW,
  /** A stray, or a point left out of a fit. */
  CROSS,
  /** A sync loss. */
  FLAG,
  /** A spark of the first coil, or of any. */
  TRIANGLE,
  /** A spark of the second coil. */
  SQUARE,
  /** A spark of the third coil. */
  DIAMOND,
  /** A spark of the fourth coil. */
  NABLA;

  private static final Mark[] COILS = {TRIANGLE, SQUARE, DIAMOND, NABLA};

  /** The shape of a coil's sparks; the shapes repeat where the colours do. */
  static Mark coil(int index) {
    return COILS[Math.floorMod(index, COILS.length)];
  }

  /** Draws marks of a size at places on the paper, all of them as one outline. */
  void draw(Graphics2D g, List<double[]> places, double size, Color colour, Color paper) {
    Path2D path = new Path2D.Double();
    for (double[] p : places) {
      outline(path, p[0], p[1], size);
    }
    g.setPaint(colour);
    switch (this) {
      case DOT -> dots(g, path, size);
      case HOLLOW -> {
        dots(g, path, size);
        g.setPaint(paper);
        dots(g, path, size - 2.4);
      }
      case CROSS -> {
        g.setStroke(Ink.line(1.5));
        g.draw(path);
      }
      case FLAG, TRIANGLE, SQUARE, DIAMOND, NABLA -> g.fill(path);
    }
  }

  /** A line without length and with a round end is a dot, the shortest way to write one. */
  private static void dots(Graphics2D g, Path2D path, double size) {
    g.setStroke(new BasicStroke((float) size, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.draw(path);
  }

  private void outline(Path2D path, double x, double y, double size) {
    double r = size / 2;
    switch (this) {
      case DOT, HOLLOW -> lines(path, x, y, x, y);
      case CROSS -> {
        lines(path, x - r, y - r, x + r, y + r);
        lines(path, x - r, y + r, x + r, y - r);
      }
      case FLAG -> {
        lines(path, x - 0.6, y, x - 0.6, y - 2 * size, x + size, y - 1.5 * size);
        lines(path, x + 0.6, y - 1.1 * size, x + 0.6, y);
        path.closePath();
      }
      case TRIANGLE -> {
        lines(path, x, y - r, x + r, y + r, x - r, y + r);
        path.closePath();
      }
      case NABLA -> {
        lines(path, x, y + r, x + r, y - r, x - r, y - r);
        path.closePath();
      }
      case SQUARE -> {
        double h = 0.86 * r; // looks as large as the others
        lines(path, x - h, y - h, x + h, y - h, x + h, y + h, x - h, y + h);
        path.closePath();
      }
      case DIAMOND -> {
        double h = 1.15 * r;
        lines(path, x, y - h, x + h, y, x, y + h, x - h, y);
        path.closePath();
      }
    }
  }

  private static void lines(Path2D path, double... xy) {
    path.moveTo(xy[0], xy[1]);
    for (int i = 2; i < xy.length; i += 2) {
      path.lineTo(xy[i], xy[i + 1]);
    }
  }
}
