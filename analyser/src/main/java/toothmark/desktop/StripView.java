package toothmark.desktop;

import java.awt.AlphaComposite;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import javax.swing.event.MouseInputAdapter;
import toothmark.chart.CaptureStrip;
import toothmark.chart.Ink;
import toothmark.units.Interval;

/** The whole capture in a strip, with the part in view framed; dragging moves the view. */
final class StripView extends PictureView {

  private static final long serialVersionUID = 1L;

  private static final int EDGE = 8;
  private static final double LEAST_FRAME = 4;

  private final transient DeskModel model;
  private transient Optional<CaptureStrip> strip = Optional.empty();
  private final transient Painting painting = new Painting(this);

  StripView(DeskModel model) {
    super("strip", Phrases.of("strip.name"), FocusRing.Idle.LINE);
    this.model = model;
    Hand hand = new Hand();
    addMouseListener(hand);
    addMouseMotionListener(hand);
    addMouseWheelListener(hand);
    model.bench.session.watch(s -> build());
    model.bench.grown.watch(n -> build());
    model.view.watch(v -> repaint());
    model.selected.watch(s -> repaint());
    model.whatIf.watchDrawn(painting::redraw);
  }

  void build() {
    strip =
        model
            .bench
            .session
            .get()
            .map(
                s ->
                    new CaptureStrip(
                        s.capture().span(), s.leadingCurve(), s.examination(), Look.ink()));
    painting.redraw();
  }

  @Override
  public Dimension getPreferredSize() {
    // on a low screen with large type the pictures need the room more
    return new Dimension(400, (int) (74 * Math.sqrt(Look.scale())));
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Ink ink = Look.ink();
    g.setColor(ink.paper());
    g.fillRect(0, 0, getWidth(), getHeight());
    Optional<TimeView> view = model.view.get();
    if (strip.isPresent() && view.isPresent()) {
      painting.show(g, this::strip);
      Paint.smooth(g);
      frame(g, view.get(), ink);
    }
    g.dispose();
  }

  private void strip(Graphics2D g) {
    strip.orElseThrow().setTried(model.whatIf.drawn());
    strip.get().draw(g, area());
  }

  private Rectangle2D area() {
    return new Rectangle2D.Double(EDGE, 4, getWidth() - 2.0 * EDGE, getHeight() - 8.0);
  }

  private void frame(Graphics2D g, TimeView view, Ink ink) {
    Rectangle2D a = area();
    double from = x(view, view.shown().startInclusive());
    double to = Math.max(from + LEAST_FRAME, x(view, view.shown().endExclusive()));
    g.setComposite(AlphaComposite.SrcOver.derive(0.55f));
    g.setColor(ink.paper());
    g.fill(new Rectangle2D.Double(a.getX() - 2, a.getY(), from - a.getX() + 2, a.getHeight()));
    g.fill(new Rectangle2D.Double(to, a.getY(), a.getMaxX() + 2 - to, a.getHeight()));
    g.setComposite(AlphaComposite.SrcOver);
    g.setColor(ink.text());
    g.setStroke(Paint.MEDIUM);
    g.draw(new Rectangle2D.Double(from, a.getY(), to - from, a.getHeight()));
    model
        .selected
        .get()
        .instant()
        .ifPresent(
            t -> {
              g.setStroke(Paint.THIN_DASHED);
              g.draw(new Line2D.Double(x(view, t), a.getY(), x(view, t), a.getMaxY()));
            });
  }

  private double x(TimeView view, double time) {
    Rectangle2D a = area();
    return a.getX()
        + a.getWidth() * (time - view.whole().startInclusive()) / view.whole().seconds();
  }

  private double time(TimeView view, int x) {
    Rectangle2D a = area();
    return view.whole().startInclusive() + view.whole().seconds() * (x - a.getX()) / a.getWidth();
  }

  /** The mouse on the strip. */
  private final class Hand extends MouseInputAdapter {

    private double offset;

    @Override
    public void mousePressed(MouseEvent e) {
      requestFocusInWindow();
      model
          .view
          .get()
          .ifPresent(
              v -> {
                double t = time(v, e.getX());
                Interval shown = v.shown();
                offset = shown.contains(t) && !v.isAll() ? t - v.middle() : 0;
                go(v, e);
              });
    }

    @Override
    public void mouseDragged(MouseEvent e) {
      model.view.get().ifPresent(v -> go(v, e));
    }

    private void go(TimeView v, MouseEvent e) {
      model.view.set(Optional.of(v.around(time(v, e.getX()) - offset)));
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
      model.zoom(Math.pow(1.25, e.getPreciseWheelRotation()));
    }
  }
}
