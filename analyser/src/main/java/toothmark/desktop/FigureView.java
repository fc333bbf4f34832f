package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.event.MouseInputAdapter;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.Range;
import toothmark.chart.Figure;
import toothmark.chart.Picked;
import toothmark.units.Interval;

/** One figure: its question, its answer, and the chart, which can be zoomed. */
final class FigureView extends JPanel {

  private static final long serialVersionUID = 1L;

  private static final double ZOOM = 1.25;
  private static final double PAN = 0.1;

  private final transient DeskModel model;
  private final String name;
  private final transient Source source;
  private final Prose question = new Prose();
  private final Prose answer = new Prose();
  private final Canvas canvas;
  private transient Optional<Figure> figure = Optional.empty();
  private transient Optional<Session> session = Optional.empty(); // that it was drawn from
  private final JPanel words = new JPanel(new BorderLayout(8, 1));
  private final AtomicLong asked = new AtomicLong();

  /** Where a figure comes from. */
  interface Source {

    /**
     * Work that draws it on another thread; asked for on the window's.
     *
     * @param outdated whether nobody waits for it any more
     */
    Callable<Optional<Figure>> work(BooleanSupplier outdated);
  }

  /**
   * Shows a figure once {@link #refresh} asked for it.
   *
   * @param source draws it
   * @param saver saves it
   */
  FigureView(DeskModel model, String name, Source source, SavingMenu.Saver saver) {
    super(new BorderLayout());
    this.model = model;
    this.source = source;
    this.name = name;
    setName("figure." + name);
    canvas = new Canvas("canvas." + name, Phrases.of("picture." + name));
    JPopupMenu menu = new JPopupMenu();
    SavingMenu.add(menu, name, () -> figure, saver);
    canvas.setComponentPopupMenu(menu);
    words.setOpaque(false);
    words.setBorder(BorderFactory.createEmptyBorder(6, 10, 2, 10));
    words.add(question, BorderLayout.NORTH);
    words.add(answer, BorderLayout.CENTER);
    add(words, BorderLayout.NORTH);
    add(canvas, BorderLayout.CENTER);
    model.selected.watch(s -> canvas.repaint());
    model.view.watch(v -> follow());
  }

  /** Puts what can be chosen beside the question, so that the answer has the whole width. */
  void offer(JComponent choices) {
    JPanel first = new JPanel(new BorderLayout(8, 0));
    first.setOpaque(false);
    first.add(question, BorderLayout.CENTER);
    first.add(choices, BorderLayout.EAST);
    words.add(first, BorderLayout.NORTH);
  }

  /** What is being drawn is of no use any more. */
  void outdate() {
    asked.incrementAndGet();
  }

  /** Draws anew, as after another examination or a change of colours; the old stays until then. */
  void refresh() {
    long mine = asked.incrementAndGet();
    Optional<Session> from = model.bench.session.get();
    BooleanSupplier outdated = () -> mine != asked.get();
    Callable<Optional<Figure>> work = source.work(outdated);
    model.bench.aside(
        e -> Complaint.of(getName(), e),
        () -> outdated.getAsBoolean() ? Optional.<Figure>empty() : work.call(),
        drawn -> {
          if (!outdated.getAsBoolean()) {
            show(drawn, from);
          }
        });
  }

  private void show(Optional<Figure> drawn, Optional<Session> from) {
    figure = drawn;
    session = from;
    canvas.painting.redraw();
    follow();
    setBackground(Look.ink().paper());
    question.say(figure.map(Figure::question).orElse(empty()), () -> Look.strong(1.05));
    answer.say(figure.map(Figure::answer).orElse(""), () -> Look.regular(1));
    canvas.getAccessibleContext().setAccessibleDescription(answer.getText());
    revalidate();
    repaint();
  }

  /** Lets a time axis hold what is in view, and shades that. */
  private void follow() {
    Optional<ValueAxis> axis = timeAxis();
    if (axis.isPresent() && model.view.get().isPresent()) {
      Range now = axis.get().getRange();
      Interval next =
          model.view.get().get().beside(new Interval(now.getLowerBound(), now.getUpperBound()));
      Range range = new Range(next.startInclusive(), next.endExclusive());
      if (!range.equals(now)) {
        axis.get().setRange(range);
        canvas.painting.redraw();
      }
    }
    canvas.repaint();
  }

  /** Shows everywhere what a time axis was moved to. */
  private void lead(ValueAxis axis) {
    if (timeAxis().filter(a -> a == axis).isPresent()) {
      model.show(new Interval(axis.getLowerBound(), axis.getUpperBound()));
    }
  }

  private Optional<ValueAxis> timeAxis() {
    return isOfWhatIsOpen() ? figure.flatMap(Figure::timeAxis) : Optional.empty();
  }

  /** Whether the capture that it was drawn from is still open, so that it may be asked more. */
  private boolean isOfWhatIsOpen() {
    return session.isPresent()
        && model
            .bench
            .session
            .get()
            .filter(s -> s.capture() == session.get().capture())
            .isPresent();
  }

  private Picked picked() {
    Selected s = model.selected.get();
    return new Picked(
        s.finding(),
        s.tooth(),
        s.instant(),
        model.view.get().filter(v -> !v.isAll()).map(TimeView::shown));
  }

  /** What it needs, where it cannot be drawn. */
  private String empty() {
    return model.examination().isEmpty()
        ? Phrases.of("trace.empty")
        : Phrases.find("picture.empty." + name).orElse(Phrases.of("picture.empty"));
  }

  @Override
  public boolean requestFocusInWindow() {
    return canvas.requestFocusInWindow();
  }

  /** The figure shown. */
  Optional<Figure> figure() {
    return figure;
  }

  /** The chart itself. */
  private final class Canvas extends PictureView {

    private static final long serialVersionUID = 1L;

    private final transient ChartRenderingInfo info = new ChartRenderingInfo(null);
    private final transient Painting painting = new Painting(this);

    Canvas(String name, String spokenName) {
      super(name, spokenName, FocusRing.Idle.NOTHING);
      Hand hand = new Hand();
      addMouseListener(hand);
      addMouseMotionListener(hand);
      addMouseWheelListener(hand);
      for (String key : new String[] {"PLUS", "ADD", "EQUALS", "UP"}) {
        key(key, () -> zoom(1 / ZOOM, middle()));
      }
      for (String key : new String[] {"MINUS", "SUBTRACT", "DOWN"}) {
        key(key, () -> zoom(ZOOM, middle()));
      }
      key("LEFT", () -> pan(PAN * dataArea().getWidth()));
      key("RIGHT", () -> pan(-PAN * dataArea().getWidth()));
      key("0", this::all);
    }

    private void key(String key, Runnable what) {
      registerKeyboardAction(e -> what.run(), KeyStroke.getKeyStroke(key), WHEN_FOCUSED);
    }

    private Rectangle2D dataArea() {
      return info.getPlotInfo().getDataArea();
    }

    private Point2D middle() {
      return new Point2D.Double(dataArea().getCenterX(), dataArea().getCenterY());
    }

    /** Shows all again; of a time axis all of the capture, everywhere. */
    private void all() {
      if (timeAxis().isPresent()) {
        model.showAll();
      }
      refresh();
    }

    private void zoom(double factor, Point2D about) {
      if (figure.isPresent() && figure.get().chart().getPlot() instanceof XYPlot p) {
        ValueAxis axis = p.getDomainAxis();
        axis.resizeRange2(
            factor,
            p instanceof CombinedDomainXYPlot
                ? axis.getRange().getCentralValue()
                : axis.java2DToValue(about.getX(), dataArea(), RectangleEdge.BOTTOM));
        painting.redraw();
        lead(axis);
      }
    }

    private void pan(double by) {
      if (figure.isPresent()
          && figure.get().chart().getPlot() instanceof XYPlot p
          && p.getDomainAxis() != null) {
        ValueAxis axis = p.getDomainAxis();
        double d = -by / Math.max(1, dataArea().getWidth()) * axis.getRange().getLength();
        axis.setRange(axis.getLowerBound() + d, axis.getUpperBound() + d);
        painting.redraw();
        lead(axis);
      }
    }

    @Override
    public JPopupMenu getComponentPopupMenu() {
      return figure.isPresent() ? super.getComponentPopupMenu() : null;
    }

    @Override
    public Dimension getPreferredSize() {
      return new Dimension(600, 200);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
      Graphics2D g = (Graphics2D) graphics.create();
      painting.show(g, this::chart);
      Paint.smooth(g);
      g.scale(Look.scale(), Look.scale());
      figure
          .filter(f -> isOfWhatIsOpen())
          .ifPresent(f -> f.mark(g, info.getPlotInfo(), picked(), Look.ink()));
      g.dispose();
    }

    private void chart(Graphics2D g) {
      g.scale(Look.scale(), Look.scale());
      figure.ifPresent(f -> f.chart().draw(g, area(), null, info));
    }

    private Rectangle2D area() {
      return new Rectangle2D.Double(
          6, 4, getWidth() / Look.scale() - 12, getHeight() / Look.scale() - 8);
    }

    private Point2D place(MouseEvent e) {
      return new Point2D.Double(e.getX() / Look.scale(), e.getY() / Look.scale());
    }

    /** The mouse on the chart: wheel zooms, drag pans, a click goes there, two show all again. */
    private final class Hand extends MouseInputAdapter {

      private transient Point2D last;
      private boolean moved;

      @Override
      public void mousePressed(MouseEvent e) {
        requestFocusInWindow();
        last = place(e);
        moved = false;
      }

      @Override
      public void mouseDragged(MouseEvent e) {
        Point2D now = place(e);
        if (figure.isPresent() && SwingUtilities.isLeftMouseButton(e)) {
          moved |= now.distance(last) > 2;
          if (moved) {
            pan(now.getX() - last.getX());
            last = now;
          }
        }
      }

      @Override
      public void mouseReleased(MouseEvent e) {
        if (!SwingUtilities.isLeftMouseButton(e) || moved || figure.isEmpty()) {
          return;
        }
        if (e.getClickCount() == 2) {
          all();
        } else if (isOfWhatIsOpen()) {
          figure.get().at(place(e), info.getPlotInfo(), picked()).ifPresent(this::pick);
        }
      }

      private void pick(Picked there) {
        there.tooth().ifPresent(model::selectTooth);
        there.instant().ifPresent(model::moveTo);
      }

      @Override
      public void mouseWheelMoved(MouseWheelEvent e) {
        zoom(Math.pow(ZOOM, e.getPreciseWheelRotation()), place(e));
      }
    }
  }
}
