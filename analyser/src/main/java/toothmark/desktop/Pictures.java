package toothmark.desktop;

import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.JTabbedPane;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Picture;

/** The figures, one beside the other; the one that proves the selected finding comes to front. */
final class Pictures {

  private static final String STALE = "stale";

  private final DeskModel model;
  private final Commands commands;
  private final JTabbedPane tabs = new JTabbedPane();
  private final Map<String, FigureView> views = new LinkedHashMap<>();
  private Optional<Finding> shown = Optional.empty();

  Pictures(DeskModel model, Commands commands) {
    this.model = model;
    this.commands = commands;
    tabs.setName("pictures");
    tabs.getAccessibleContext().setAccessibleName(Phrases.of("pictures.name"));
    tabs.setTabLayoutPolicy(JTabbedPane.SCROLL_TAB_LAYOUT);
    add("wheel", (f, e) -> f.draw(Picture.WHEEL));
    add("speed", (f, e) -> f.draw(Picture.SPEED));
    add("advance", (f, e) -> f.draw(Picture.ADVANCE));
    add("alignment", (f, e) -> f.draw(Picture.ALIGNMENT));
    add("dwell", (f, e) -> f.draw(Picture.DWELL));
    add("sync", (f, e) -> f.draw(Picture.SYNC));
    add("period", (f, e) -> f.draw(Picture.TOOTH_PERIOD));
    add("orders", (f, e) -> f.draw(Picture.ORDERS));
    tabs.addChangeListener(e -> refreshShown());
    model.bench.session.watch(s -> refresh());
    model.selected.watch(s -> follow());
  }

  private void add(String name, BiFunction<Figures, Examination, Optional<Figure>> draw) {
    Supplier<Optional<Figure>> source =
        () -> model.examination().flatMap(e -> draw.apply(Figures.of(e, Look.ink()), e));
    FigureView view = new FigureView(model, name, source);
    view.canvas()
        .addMouseListener(
            new MouseAdapter() {
              @Override
              public void mousePressed(MouseEvent e) {
                offer(e);
              }

              @Override
              public void mouseReleased(MouseEvent e) {
                offer(e);
              }
            });
    views.put(name, view);
    tabs.addTab(Phrases.of("picture." + name), view);
  }

  private void offer(MouseEvent e) {
    if (e.isPopupTrigger() && current().flatMap(c -> c.getValue().figure()).isPresent()) {
      JPopupMenu menu = new JPopupMenu();
      menu.add(new JMenuItem(commands.get("savePicture")));
      menu.show(e.getComponent(), e.getX(), e.getY());
    }
  }

  JTabbedPane tabs() {
    return tabs;
  }

  /** The figure in front, and its name for a file; empty while the trace is in front. */
  Optional<Map.Entry<String, FigureView>> current() {
    return views.entrySet().stream()
        .filter(v -> v.getValue() == tabs.getSelectedComponent())
        .findFirst();
  }

  /** Puts the trace before the figures. */
  void addTrace(JComponent trace) {
    tabs.insertTab(Phrases.of("command.trace"), null, trace, null, 0);
    tabs.setSelectedIndex(0);
  }

  /** Takes the trace out again. */
  void removeTrace() {
    if (tabs.getTabCount() > views.size()) {
      tabs.removeTabAt(0);
    }
  }

  /** Brings the trace to front where it is one of the tabs. */
  void showTrace() {
    if (tabs.getTabCount() > views.size()) {
      tabs.setSelectedIndex(0);
    }
  }

  /** Only the figure in front is drawn; the others wait until they are looked at. */
  void refresh() {
    views.values().forEach(v -> v.putClientProperty(STALE, Boolean.TRUE));
    refreshShown();
  }

  private void refreshShown() {
    current()
        .map(Map.Entry::getValue)
        .filter(v -> Boolean.TRUE.equals(v.getClientProperty(STALE)))
        .ifPresent(
            v -> {
              v.putClientProperty(STALE, null);
              v.refresh();
            });
  }

  private void follow() {
    Optional<Finding> now = model.selected.get().finding();
    if (!now.equals(shown)) {
      shown = now;
      now.ifPresent(f -> show(nameOf(f.picture())));
    }
  }

  /** Brings a figure to front. */
  void show(String name) {
    tabs.setSelectedComponent(views.get(name));
  }

  private static String nameOf(Picture picture) {
    return switch (picture) {
      case WAVEFORM, SYNC -> "sync";
      case TOOTH_PERIOD -> "period";
      case SPEED -> "speed";
      case WHEEL -> "wheel";
      case ADVANCE -> "advance";
      case ALIGNMENT -> "alignment";
      case DWELL -> "dwell";
      case ORDERS -> "orders";
    };
  }
}
