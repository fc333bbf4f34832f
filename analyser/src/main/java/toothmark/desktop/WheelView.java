package toothmark.desktop;

import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseEvent;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.event.MouseInputAdapter;
import toothmark.chart.WheelPicture;

/** The wheel under its sensor; a click picks a tooth, dragging turns the crank by hand. */
final class WheelView extends PictureView {

  private static final long serialVersionUID = 1L;

  private static final double LARGEST = 1.4;

  private final transient DeskModel model;
  private transient Optional<WheelPicture> wheel = Optional.empty();

  WheelView(DeskModel model) {
    super("wheel", Phrases.of("wheel.name"), FocusRing.Idle.LINE);
    this.model = model;
    getAccessibleContext().setAccessibleDescription(Phrases.of("wheel.help"));
    setToolTipText(Phrases.of("wheel.help"));
    Hand hand = new Hand();
    addMouseListener(hand);
    addMouseMotionListener(hand);
    model.bench.session.watch(s -> build());
    model.selected.watch(s -> repaint());
  }

  void build() {
    wheel = model.examination().flatMap(e -> WheelPicture.of(e, Look.ink()));
    repaint();
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    g.setColor(Look.ink().paper());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (wheel.isEmpty()) {
      if (model.examination().isPresent()) {
        Paint.hint(g, this, Phrases.of("wheel.empty"));
      }
    } else {
      Paint.smooth(g);
      g.scale(scale(), scale());
      OptionalDouble t = model.selected.get().instant();
      wheel
          .get()
          .draw(
              g,
              area(),
              model.selected.get().tooth(),
              t.isPresent() ? model.degreesAt(t.getAsDouble()).orElse(0) : 0);
    }
    g.dispose();
  }

  private double scale() {
    double side = Math.min(getWidth(), getHeight()) / Look.scale();
    return Look.scale() * Math.min(LARGEST, WheelPicture.scale(side));
  }

  /** The place of the drawing, in its own units. */
  private Rectangle2D area() {
    return new Rectangle2D.Double(2, 2, getWidth() / scale() - 4, getHeight() / scale() - 4);
  }

  /** The mouse on the wheel. */
  private final class Hand extends MouseInputAdapter {

    private boolean turned;
    private double last;

    /** Clockwise from the top, whichever part of the wheel is there. */
    private double degrees(MouseEvent e) {
      return Math.toDegrees(Math.atan2(e.getX() - getWidth() / 2.0, getHeight() / 2.0 - e.getY()));
    }

    @Override
    public void mousePressed(MouseEvent e) {
      requestFocusInWindow();
      turned = false;
      last = degrees(e);
    }

    @Override
    public void mouseDragged(MouseEvent e) {
      if (wheel.isPresent()) {
        turned = true;
        model.turnBy(last - degrees(e));
        last = degrees(e);
      }
    }

    @Override
    public void mouseReleased(MouseEvent e) {
      if (wheel.isPresent() && !turned) {
        Point2D place = new Point2D.Double(e.getX() / scale(), e.getY() / scale());
        wheel.get().toothAt(place).ifPresent(model::selectTooth);
      }
    }
  }
}
