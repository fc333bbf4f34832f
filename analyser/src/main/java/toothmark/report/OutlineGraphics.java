package toothmark.report;

import java.awt.Color;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Polygon;
import java.awt.Rectangle;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;

/**
 * Turns every figure into an outline to draw or to fill, and every text into a string. Images,
 * copies and blending are refused: a chart in a report needs none.
 */
abstract class OutlineGraphics extends Graphics2D {

  @Override
  public final void drawLine(int x1, int y1, int x2, int y2) {
    draw(new Line2D.Double(x1, y1, x2, y2));
  }

  @Override
  public final void fillRect(int x, int y, int width, int height) {
    fill(new Rectangle(x, y, width, height));
  }

  @Override
  public final void drawRoundRect(int x, int y, int w, int h, int arcWidth, int arcHeight) {
    draw(new RoundRectangle2D.Double(x, y, w, h, arcWidth, arcHeight));
  }

  @Override
  public final void fillRoundRect(int x, int y, int w, int h, int arcWidth, int arcHeight) {
    fill(new RoundRectangle2D.Double(x, y, w, h, arcWidth, arcHeight));
  }

  @Override
  public final void drawOval(int x, int y, int width, int height) {
    draw(new Ellipse2D.Double(x, y, width, height));
  }

  @Override
  public final void fillOval(int x, int y, int width, int height) {
    fill(new Ellipse2D.Double(x, y, width, height));
  }

  @Override
  public final void drawArc(int x, int y, int width, int height, int start, int extent) {
    draw(new Arc2D.Double(x, y, width, height, start, extent, Arc2D.OPEN));
  }

  @Override
  public final void fillArc(int x, int y, int width, int height, int start, int extent) {
    fill(new Arc2D.Double(x, y, width, height, start, extent, Arc2D.PIE));
  }

  @Override
  public final void drawPolyline(int[] xs, int[] ys, int count) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < count; i++) {
      if (i == 0) {
        path.moveTo(xs[i], ys[i]);
      } else {
        path.lineTo(xs[i], ys[i]);
      }
    }
    draw(path);
  }

  @Override
  public final void drawPolygon(int[] xs, int[] ys, int count) {
    draw(new Polygon(xs, ys, count));
  }

  @Override
  public final void fillPolygon(int[] xs, int[] ys, int count) {
    fill(new Polygon(xs, ys, count));
  }

  @Override
  public final void drawString(String text, int x, int y) {
    drawString(text, (float) x, (float) y);
  }

  @Override
  public final void drawString(AttributedCharacterIterator text, int x, int y) {
    drawString(text, (float) x, (float) y);
  }

  @Override
  public final void drawString(AttributedCharacterIterator text, float x, float y) {
    StringBuilder plain = new StringBuilder();
    for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
      plain.append(c);
    }
    drawString(plain.toString(), x, y);
  }

  @Override
  public final void drawGlyphVector(GlyphVector glyphs, float x, float y) {
    fill(glyphs.getOutline(x, y));
  }

  static UnsupportedOperationException refused(String what) {
    return new UnsupportedOperationException("a chart in a report needs no " + what);
  }

  @Override
  public final Graphics create() {
    throw refused("second pen");
  }

  @Override
  public final GraphicsConfiguration getDeviceConfiguration() {
    throw refused("device");
  }

  @Override
  public final void setXORMode(Color colour) {
    throw refused("exclusive or");
  }

  @Override
  public final void copyArea(int x, int y, int width, int height, int dx, int dy) {
    throw refused("copy");
  }

  @Override
  public final void drawRenderedImage(RenderedImage image, AffineTransform at) {
    throw refused("image");
  }

  @Override
  public final void drawRenderableImage(RenderableImage image, AffineTransform at) {
    throw refused("image");
  }

  @Override
  public final void drawImage(BufferedImage image, BufferedImageOp op, int x, int y) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(Image image, AffineTransform at, ImageObserver o) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(Image image, int x, int y, ImageObserver o) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(Image image, int x, int y, int w, int h, ImageObserver o) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(Image image, int x, int y, Color ground, ImageObserver o) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(
      Image image, int x, int y, int w, int h, Color ground, ImageObserver o) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(
      Image image,
      int dx1,
      int dy1,
      int dx2,
      int dy2,
      int sx1,
      int sy1,
      int sx2,
      int sy2,
      ImageObserver o) {
    throw refused("image");
  }

  @Override
  public final boolean drawImage(
      Image image,
      int dx1,
      int dy1,
      int dx2,
      int dy2,
      int sx1,
      int sy1,
      int sx2,
      int sy2,
      Color ground,
      ImageObserver o) {
    throw refused("image");
  }
}
