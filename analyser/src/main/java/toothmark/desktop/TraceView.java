package toothmark.desktop;

import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.swing.SwingUtilities;
import javax.swing.event.MouseInputAdapter;
import toothmark.capture.Channel;
import toothmark.chart.Ink;
import toothmark.chart.TraceChart;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;

/** All channels over time; shows the model's view and selection and changes them by hand. */
final class TraceView extends PictureView {

  private static final long serialVersionUID = 1L;

  private static final double NEAR = 8;
  private static final double ZOOM_STEP = 1.25;
  private static final int FOOT = 4;

  private final transient DeskModel model;
  private transient Optional<TraceChart> chart = Optional.empty();
  private final transient Painting painting = new Painting(this);
  private transient OptionalDouble pointer = OptionalDouble.empty();

  TraceView(DeskModel model) {
    super("trace", Phrases.of("trace.name"), FocusRing.Idle.LINE);
    this.model = model;
    getAccessibleContext().setAccessibleDescription(Phrases.of("trace.help"));
    Hand hand = new Hand();
    addMouseListener(hand);
    addMouseMotionListener(hand);
    addMouseWheelListener(hand);
    model.bench.session.watch(s -> build());
    model.bench.grown.watch(n -> build());
    model.bench.progress.watch(
        p -> {
          if (chart.isEmpty()) {
            repaint(); // the hint goes and comes
          }
        });
    model.view.watch(v -> redraw());
    model.selected.watch(s -> redraw());
    model.cursors.watch(c -> repaint());
    model.along.watch(a -> redraw());
    model.height.watch(h -> redraw());
    model.whatIf.watchDrawn(this::redraw);
  }

  /** Lays the chart out anew, as after a change of colours. */
  void build() {
    chart =
        model
            .bench
            .session
            .get()
            .map(s -> new TraceChart(s.drawn(), s.capture().span(), s.examination(), Look.ink()));
    redraw();
  }

  private void redraw() {
    painting.redraw();
  }

  /** Where the pointer is, else the selected instant; where a measuring cursor is put. */
  OptionalDouble pointed() {
    return pointer.isPresent() ? pointer : model.selected.get().instant();
  }

  /** The channel at a place, for its menu. */
  Optional<Channel> channelAt(MouseEvent e) {
    if (chart.isEmpty()) {
      return Optional.empty();
    }
    double scale = Look.scale();
    OptionalInt i =
        chart.get().channelAt(new java.awt.geom.Point2D.Double(e.getX() / scale, e.getY() / scale));
    return i.isEmpty()
        ? Optional.empty()
        : model.bench.session.get().map(s -> s.drawn().get(i.getAsInt()).channel());
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(800, 320);
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(200, 120);
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Ink ink = Look.ink();
    g.setColor(ink.paper());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (chart.isEmpty() || model.view.get().isEmpty()) {
      if (model.bench.progress.get().isEmpty()) {
        Paint.hint(g, this, Phrases.of("trace.empty"));
      }
    } else {
      painting.show(g, p -> trace(p, chart.get()));
      double scale = Look.scale();
      g.scale(scale, scale);
      Paint.smooth(g);
      marks(g, chart.get(), ink);
    }
    g.dispose();
  }

  private void trace(Graphics2D g, TraceChart c) {
    c.setAlong(model.along.get());
    c.setHeight(model.height.get());
    c.setTried(model.whatIf.drawn());
    c.setTooth(model.selected.get().tooth());
    c.show(model.view.get().orElseThrow().shown());
    double scale = Look.scale();
    g.scale(scale, scale);
    c.draw(g, new Rectangle2D.Double(2, 2, getWidth() / scale - 4, getHeight() / scale - FOOT));
  }

  private void marks(Graphics2D g, TraceChart c, Ink ink) {
    Cursors cursors = model.cursors.get();
    OptionalDouble at = model.selected.get().instant();
    at.ifPresent(t -> upright(g, c, t, ink.text(), ""));
    cursors.first().ifPresent(t -> upright(g, c, t, ink.tdc(), "A"));
    cursors.second().ifPresent(t -> upright(g, c, t, ink.tdc(), "B"));
    if (cursors.first().isPresent() && cursors.second().isPresent()) {
      span(g, c, cursors, ink);
    }
  }

  private void upright(Graphics2D g, TraceChart c, double time, Color colour, String name) {
    Rectangle2D a = c.curves();
    double x = c.xOf(time);
    if (x < a.getMinX() || x > a.getMaxX()) {
      return;
    }
    g.setColor(colour);
    g.setStroke(name.isEmpty() ? Paint.THIN_DASHED : Paint.MEDIUM);
    g.draw(new Line2D.Double(x, a.getMinY(), x, a.getMaxY()));
    if (!name.isEmpty()) {
      Paint.tag(g, name, x, a.getMaxY() - 18, a, colour);
    }
  }

  private void span(Graphics2D g, TraceChart c, Cursors cursors, Ink ink) {
    model
        .examination()
        .ifPresent(
            e -> {
              Rectangle2D a = c.curves();
              double from = clamp(c.xOf(cursors.first().getAsDouble()), a);
              double to = clamp(c.xOf(cursors.second().getAsDouble()), a);
              double y = a.getMaxY() - 10;
              g.setColor(ink.tdc());
              g.setStroke(Paint.MEDIUM);
              g.draw(new Line2D.Double(from, y, to, y));
              Paint.tag(g, cursors.measure(e).say(), (from + to) / 2, y - 8, a, ink.tdc());
            });
  }

  private static double clamp(double x, Rectangle2D a) {
    return Math.max(a.getMinX(), Math.min(a.getMaxX(), x));
  }

  private double timeAt(int x) {
    return chart.orElseThrow().timeAt(x / Look.scale());
  }

  /** Where an instant was drawn last. */
  double xOf(double time) {
    return chart.orElseThrow().xOf(time) * Look.scale();
  }

  private boolean isLive() {
    return chart.isPresent() && model.view.get().isPresent() && painting.isThere();
  }

  private void click(int x, boolean onCoil) {
    double t = timeAt(x);
    Optional<CaptureEvent> event =
        model.events().stream()
            .filter(e -> Math.abs(xOf(e.timeSeconds()) - x) <= NEAR)
            .min(java.util.Comparator.comparingDouble(e -> Math.abs(e.timeSeconds() - t)));
    if (event.isPresent()) {
      model.select(event.get());
      return;
    }
    OptionalDouble spark = onCoil ? model.sparkNear(t) : OptionalDouble.empty();
    if (spark.isPresent() && Math.abs(xOf(spark.getAsDouble()) - x) <= NEAR) {
      model.selectInstant(spark.getAsDouble());
      return;
    }
    Optional<ToothEvents> teeth = model.examination().flatMap(e -> e.teeth());
    OptionalInt near = teeth.map(e -> Teeth.nearest(e, t)).orElse(OptionalInt.empty());
    boolean onTooth =
        near.isPresent() && Math.abs(xOf(teeth.get().time(near.getAsInt())) - x) <= NEAR;
    model.selectInstant(onTooth ? teeth.get().time(near.getAsInt()) : t);
  }

  /** What the pointer says in the line below the trace. */
  String say() {
    if (pointer.isEmpty()) {
      return "";
    }
    double t = pointer.getAsDouble();
    StringBuilder s = new StringBuilder(Say.number(t, 6)).append(Say.THIN).append('s');
    model.degreesAt(t).ifPresent(d -> s.append("  ").append(Say.number(d, 1)).append('°'));
    model.rpmAt(t).ifPresent(r -> s.append("  ").append(Say.rpm(r)));
    return s.toString();
  }

  /** The mouse on the trace. */
  private final class Hand extends MouseInputAdapter {

    private int lastX;
    private boolean moved;
    private Grip grip = Grip.TRACE;

    @Override
    public void mousePressed(MouseEvent e) {
      requestFocusInWindow();
      if (isLive() && SwingUtilities.isLeftMouseButton(e)) {
        lastX = e.getX();
        moved = false;
        grip = gripAt(e.getX());
      }
    }

    private Grip gripAt(int x) {
      Cursors c = model.cursors.get();
      if (c.first().isPresent() && Math.abs(xOf(c.first().getAsDouble()) - x) < NEAR / 2) {
        return Grip.FIRST;
      }
      return c.second().isPresent() && Math.abs(xOf(c.second().getAsDouble()) - x) < NEAR / 2
          ? Grip.SECOND
          : Grip.TRACE;
    }

    @Override
    public void mouseDragged(MouseEvent e) {
      if (!isLive() || !SwingUtilities.isLeftMouseButton(e)) {
        return;
      }
      moved |= Math.abs(e.getX() - lastX) > 2;
      switch (grip) {
        case FIRST -> model.cursors.set(model.cursors.get().withFirst(timeAt(e.getX())));
        case SECOND -> model.cursors.set(model.cursors.get().withSecond(timeAt(e.getX())));
        case TRACE -> {
          if (moved) {
            double by = timeAt(lastX) - timeAt(e.getX());
            model.view.set(model.view.get().map(v -> v.movedBy(by)));
            lastX = e.getX();
          }
        }
      }
    }

    @Override
    public void mouseReleased(MouseEvent e) {
      if (isLive() && SwingUtilities.isLeftMouseButton(e) && !moved && grip == Grip.TRACE) {
        if (e.getClickCount() == 2) {
          model.showAll();
        } else {
          click(e.getX(), channelAt(e).filter(c -> model.isCoil(c.name())).isPresent());
        }
      }
    }

    @Override
    public void mouseMoved(MouseEvent e) {
      if (isLive()) {
        pointer = OptionalDouble.of(timeAt(e.getX()));
        setCursor(
            Cursor.getPredefinedCursor(
                gripAt(e.getX()) == Grip.TRACE ? Cursor.DEFAULT_CURSOR : Cursor.E_RESIZE_CURSOR));
        firePropertyChange("pointer", null, say());
      }
    }

    @Override
    public void mouseExited(MouseEvent e) {
      pointer = OptionalDouble.empty();
      firePropertyChange("pointer", null, "");
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
      if (!isLive()) {
        return;
      }
      double turns = e.getPreciseWheelRotation();
      if (e.isShiftDown()) {
        model.pan(0.1 * turns);
      } else {
        double about = timeAt(e.getX());
        model.view.set(model.view.get().map(v -> v.zoomed(Math.pow(ZOOM_STEP, turns), about)));
      }
    }
  }

  /** What the mouse took hold of. */
  private enum Grip {
    TRACE,
    FIRST,
    SECOND
  }
}
