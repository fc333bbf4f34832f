package toothmark.desktop;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import javax.swing.JComponent;
import javax.swing.JTabbedPane;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.findings.Finding;
import toothmark.findings.Picture;

/** The figures, one beside the other; the one that proves the selected finding comes to front. */
final class Pictures {

  private static final String STALE = "stale";

  private final DeskModel model;
  private final SavingMenu.Saver saver;
  private final JTabbedPane tabs = new JTabbedPane();
  private final Map<String, FigureView> views = new LinkedHashMap<>();
  private Optional<Finding> shown = Optional.empty();

  Pictures(DeskModel model, SavingMenu.Saver saver) {
    this.model = model;
    this.saver = saver;
    tabs.setName("pictures");
    tabs.getAccessibleContext().setAccessibleName(Phrases.of("command.pictures"));
    OneRow.of(tabs);
    add("wheel", f -> f.draw(Picture.WHEEL));
    turns();
    add("speed", f -> f.draw(Picture.SPEED));
    add("advance", f -> f.draw(Picture.ADVANCE));
    add("alignment", f -> f.draw(Picture.ALIGNMENT));
    add("dwell", f -> f.draw(Picture.DWELL));
    add("sync", f -> f.draw(Picture.SYNC));
    add("period", f -> f.draw(Picture.TOOTH_PERIOD));
    add("orders", f -> f.draw(Picture.ORDERS));
    tabs.addChangeListener(e -> refreshShown());
    model.bench.session.watch(s -> refresh());
    model.selected.watch(s -> follow());
  }

  private FigureView add(String name, Function<Figures, Optional<Figure>> draw) {
    return addFrom(name, outdated -> work(draw));
  }

  private FigureView addFrom(String name, FigureView.Source source) {
    FigureView view = new FigureView(model, name, source, saver);
    views.put(name, view);
    tabs.addTab(Phrases.of("picture." + name), view);
    return view;
  }

  private void turns() {
    FigureView view =
        addFrom(
            "turns",
            outdated -> {
              DeskModel.Folded f = model.folded.get();
              return work(figures -> figures.turns(f.channel(), f.fold(), outdated));
            });
    view.offer(new FoldChoices(model));
    model.folded.watch(f -> refresh(view));
  }

  private Callable<Optional<Figure>> work(Function<Figures, Optional<Figure>> draw) {
    Optional<Figures> figures = model.examination().map(e -> Figures.of(e, Look.ink()));
    return () -> figures.flatMap(draw);
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
    views.values().forEach(this::refresh);
  }

  private void refresh(FigureView view) {
    view.outdate();
    view.putClientProperty(STALE, Boolean.TRUE);
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
      now.ifPresent(this::prove);
    }
  }

  /** What shows at a place of the trace is proved there, where both are not in view together. */
  private void prove(Finding finding) {
    show(nameOf(finding.picture()));
    boolean inTrace =
        finding.picture() == Picture.WAVEFORM
            || finding.picture() == Picture.SYNC && !finding.where().isEmpty();
    if (inTrace) {
      showTrace();
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
