package toothmark.desktop;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Stroke;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import javax.swing.JComponent;
import toothmark.chart.Lettering;

/** Small things that several pictures draw alike. */
final class Paint {

  static final Stroke MEDIUM = new BasicStroke(1.5f);
  static final Stroke THIN_DASHED =
      new BasicStroke(
          1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {3f, 3f}, 0f);

  private static final double TAG_SIZE = 11.5;

  private Paint() {}

  static void smooth(Graphics2D g) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
  }

  /** Words in the middle of an empty picture. */
  static void hint(Graphics2D g, JComponent where, String text) {
    smooth(g);
    g.setFont(Look.regular(1.1));
    g.setColor(Look.quiet());
    FontMetrics m = g.getFontMetrics();
    g.drawString(
        text,
        (where.getWidth() - m.stringWidth(text)) / 2,
        where.getHeight() / 2 + m.getAscent() / 2);
  }

  /** Words on a patch, centred on a point. */
  static void tag(
      Graphics2D g, String text, double about, double y, Rectangle2D within, Color colour) {
    g.setFont(Lettering.strong(TAG_SIZE));
    FontMetrics m = g.getFontMetrics();
    double w = m.stringWidth(text) + 10;
    double h = m.getHeight() + 2;
    double x = Math.max(within.getMinX() + w / 2, Math.min(within.getMaxX() - w / 2, about));
    g.setColor(Look.ink().paper());
    RoundRectangle2D patch = new RoundRectangle2D.Double(x - w / 2, y - h / 2, w, h, 6, 6);
    g.fill(patch);
    g.setColor(colour);
    g.setStroke(MEDIUM);
    g.draw(patch);
    g.setColor(Look.ink().text());
    g.drawString(text, (float) (x - w / 2 + 5), (float) (y - h / 2 + m.getAscent() + 1));
  }
}
