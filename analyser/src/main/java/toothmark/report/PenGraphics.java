package toothmark.report;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.Map;

/** A pen that knows its colour, stroke, typeface, place and clip. Clips are rectangles. */
abstract class PenGraphics extends OutlineGraphics {

  private final RenderingHints hints = new RenderingHints(Map.of());
  private AffineTransform transform = new AffineTransform();
  private Rectangle2D deviceClip;
  private Paint paint = Color.BLACK;
  private Color background = Color.WHITE;
  private Stroke stroke = new BasicStroke();
  private Font font;
  private Composite composite = AlphaComposite.SrcOver;

  PenGraphics(Font font) {
    this.font = font;
  }

  /** The clip on the paper; null where there is none. */
  final Rectangle2D deviceClip() {
    return deviceClip;
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
}
