package toothmark.chart;

import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/** The name of a channel, in the upper left corner of its plot. */
record NameLayer(String name, Color colour, Color paper) implements Layer {

  private static final double SIZE = 11.5;
  private static final double PAD = 3;

  @Override
  public void paint(Graphics2D g, Frame frame) {
    g.setFont(Lettering.strong(SIZE));
    FontMetrics m = g.getFontMetrics();
    double x = frame.area().getMinX() + PAD;
    double y = frame.area().getMinY() + 1;
    g.setPaint(paper);
    g.fill(new Rectangle2D.Double(x - PAD, y, m.stringWidth(name) + 2 * PAD, m.getHeight()));
    g.setPaint(colour);
    g.drawString(name, (float) x, (float) (y + m.getAscent()));
  }
}
