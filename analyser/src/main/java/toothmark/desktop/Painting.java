package toothmark.desktop;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.function.Consumer;
import javax.swing.JComponent;

/** What is costly to draw, kept as an image until something of it changed. */
final class Painting {

  private final JComponent where;
  private BufferedImage image;
  private boolean stale = true;

  Painting(JComponent where) {
    this.where = where;
  }

  /** Has it drawn anew when it is next needed. */
  void redraw() {
    stale = true;
    where.repaint();
  }

  /** Whether it was drawn at all. */
  boolean isThere() {
    return image != null;
  }

  /**
   * Puts it on the screen.
   *
   * @param painter draws it, in the units of the component, where it is not kept
   */
  void show(Graphics2D g, Consumer<Graphics2D> painter) {
    AffineTransform device = g.getTransform();
    int w = (int) Math.max(1, Math.ceil(where.getWidth() * device.getScaleX()));
    int h = (int) Math.max(1, Math.ceil(where.getHeight() * device.getScaleY()));
    if (image == null || image.getWidth() != w || image.getHeight() != h) {
      image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
      stale = true;
    }
    if (stale) {
      Graphics2D p = image.createGraphics();
      p.setColor(Look.ink().paper());
      p.fillRect(0, 0, w, h);
      p.scale(device.getScaleX(), device.getScaleY());
      Paint.smooth(p);
      painter.accept(p);
      p.dispose();
      stale = false;
    }
    g.drawImage(image, 0, 0, where.getWidth(), where.getHeight(), null);
  }
}
