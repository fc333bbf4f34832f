package toothmark.report;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.Map;
import java.util.Objects;

/** A pen that knows its colour, stroke, typeface, place and clip. Clips are rectangles. */
abstract class PenGraphics extends OutlineGraphics {

  private final RenderingHints hints = new RenderingHints(Map.of());
  private AffineTransform transform = new AffineTransform();
  private Rectangle2D deviceClip;
  private Rectangle2D openClip;
  private Paint paint = Color.BLACK;
  private Color background = Color.WHITE;
  private Stroke stroke = new BasicStroke();
  private Font font;
  private Composite composite = AlphaComposite.SrcOver;

  PenGraphics(Font font) {
    this.font = font;
  }

  /** Starts to clip what is drawn to a rectangle on the paper. */
  abstract void openClip(Rectangle2D onPaper);

  /** Ends the clip opened last. */
  abstract void closeClip();

  /** Opens the clip that is asked for, unless it is the one that is open. */
  final void clipAsAsked() {
    if (!Objects.equals(deviceClip, openClip)) {
      endClip();
      if (deviceClip != null) {
        openClip(deviceClip);
        openClip = deviceClip;
      }
    }
  }

  /** Ends the clip that is open. */
  final void endClip() {
    if (openClip != null) {
      closeClip();
      openClip = null;
    }
  }

  /**
   * The colour to draw in.
   *
   * @throws UnsupportedOperationException if the paint is no opaque colour
   */
  final Color opaque() {
    if (!(paint instanceof Color c) || c.getAlpha() != 255) {
      throw refused("paint but opaque colours");
    }
    return c;
  }

  @Override
  public final void setPaint(Paint paint) {
    this.paint = paint == null ? this.paint : paint;
  }

  @Override
  public final Paint getPaint() {
    return paint;
  }

  @Override
  public final void setColor(Color colour) {
    setPaint(colour);
  }

  @Override
  public final Color getColor() {
    return paint instanceof Color c ? c : Color.BLACK;
  }

  @Override
  public final void setBackground(Color colour) {
    background = colour;
  }

  @Override
  public final Color getBackground() {
    return background;
  }

  @Override
  public final void setStroke(Stroke stroke) {
    this.stroke = stroke;
  }

  @Override
  public final Stroke getStroke() {
    return stroke;
  }

  @Override
  public final void setFont(Font font) {
    this.font = font;
  }

  @Override
  public final Font getFont() {
    return font;
  }

  @Override
  public final void setComposite(Composite composite) {
    this.composite = composite;
  }

  @Override
  public final Composite getComposite() {
    return composite;
  }

  @Override
  public final void setPaintMode() {
    composite = AlphaComposite.SrcOver;
  }

  @Override
  public final void setRenderingHint(RenderingHints.Key key, Object value) {
    hints.put(key, value);
  }

  @Override
  public final Object getRenderingHint(RenderingHints.Key key) {
    return hints.get(key);
  }

  @Override
  public final void setRenderingHints(Map<?, ?> all) {
    hints.clear();
    hints.putAll(all);
  }

  @Override
  public final void addRenderingHints(Map<?, ?> more) {
    hints.putAll(more);
  }

  @Override
  public final RenderingHints getRenderingHints() {
    return (RenderingHints) hints.clone();
  }

  @Override
  public final void translate(int x, int y) {
    transform.translate(x, y);
  }

  @Override
  public final void translate(double x, double y) {
    transform.translate(x, y);
  }

  @Override
  public final void rotate(double radians) {
    transform.rotate(radians);
  }

  @Override
  public final void rotate(double radians, double x, double y) {
    transform.rotate(radians, x, y);
  }

  @Override
  public final void scale(double x, double y) {
    transform.scale(x, y);
  }

  @Override
  public final void shear(double x, double y) {
    transform.shear(x, y);
  }

  @Override
  public final void transform(AffineTransform more) {
    transform.concatenate(more);
  }

  @Override
  public final void setTransform(AffineTransform other) {
    transform = new AffineTransform(other);
  }

  @Override
  public final AffineTransform getTransform() {
    return new AffineTransform(transform);
  }

  @Override
  public final void setClip(Shape clip) {
    deviceClip = clip == null ? null : onPaper(clip);
  }

  @Override
  public final void clip(Shape clip) {
    Rectangle2D more = onPaper(clip);
    deviceClip = deviceClip == null ? more : deviceClip.createIntersection(more);
  }

  @Override
  public final Shape getClip() {
    return deviceClip == null ? null : inverse().createTransformedShape(deviceClip);
  }

  @Override
  public final Rectangle getClipBounds() {
    return deviceClip == null ? null : getClip().getBounds();
  }

  @Override
  public final void clipRect(int x, int y, int width, int height) {
    clip(new Rectangle(x, y, width, height));
  }

  @Override
  public final void setClip(int x, int y, int width, int height) {
    setClip(new Rectangle(x, y, width, height));
  }

  private Rectangle2D onPaper(Shape clip) {
    return transform.createTransformedShape(clip).getBounds2D();
  }

  private AffineTransform inverse() {
    AffineTransform inverse = getTransform();
    try {
      inverse.invert();
    } catch (java.awt.geom.NoninvertibleTransformException e) {
      throw new IllegalStateException("a pen cannot draw at scale 0", e);
    }
    return inverse;
  }

  @Override
  public final void clearRect(int x, int y, int width, int height) {
    Paint kept = paint;
    setPaint(background);
    fillRect(x, y, width, height);
    setPaint(kept);
  }

  @Override
  public final FontRenderContext getFontRenderContext() {
    return new FontRenderContext(null, true, true);
  }

  @Override
  public final boolean hit(Rectangle place, Shape shape, boolean onStroke) {
    Shape asked = onStroke ? stroke.createStrokedShape(shape) : shape;
    return transform.createTransformedShape(asked).intersects(place);
  }

  @Override
  public final void dispose() {
    // Nothing is held.
  }

  @Override
  public final FontMetrics getFontMetrics(Font font) {
    return new PlainMetrics(font);
  }

  /** Measures from the typeface alone; the usual ones start half a window system first. */
  private static final class PlainMetrics extends FontMetrics {

    private static final long serialVersionUID = 1L;

    private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);

    PlainMetrics(Font font) {
      super(font);
    }

    @Override
    public int stringWidth(String text) {
      return (int) Math.ceil(font.getStringBounds(text, CONTEXT).getWidth());
    }

    @Override
    public int getAscent() {
      return Math.round(font.getLineMetrics("", CONTEXT).getAscent());
    }

    @Override
    public int getDescent() {
      return Math.round(font.getLineMetrics("", CONTEXT).getDescent());
    }

    @Override
    public int getLeading() {
      return 0;
    }

    @Override
    public int charWidth(char c) {
      return stringWidth(String.valueOf(c));
    }
  }
}
