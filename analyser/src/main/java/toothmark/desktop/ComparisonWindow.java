package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.Font;
import java.awt.GridLayout;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import javax.swing.ScrollPaneConstants;
import net.miginfocom.swing.MigLayout;
import toothmark.chart.ComparisonFigures;
import toothmark.chart.Figure;
import toothmark.compare.Change;
import toothmark.compare.Comparison;
import toothmark.compare.RecordedFinding;
import toothmark.report.ComparisonText;

/** An earlier capture against what is open: what changed, and both laid over each other. */
final class ComparisonWindow {

  final JFrame frame = new JFrame();
  final Notice notice;
  private final DeskModel model;
  private final Compared compared;
  private final List<FigureView> views = new ArrayList<>();
  private final JPanel words =
      new JPanel(new MigLayout("insets 12, gapy 3, fillx, wrap 1", "[300,grow,fill]"));

  ComparisonWindow(DeskModel model, Compared compared, Notice notice, SavingMenu.Saver saver) {
    this.notice = notice;
    this.model = model;
    this.compared = compared;
    frame.setTitle(Phrases.of("compare.title", compared.before(), compared.after()));
    frame.setName("comparison");
    JPanel all = new JPanel(new BorderLayout());
    all.add(notice, BorderLayout.NORTH);
    all.add(scrolled(), BorderLayout.WEST);
    all.add(figures(saver), BorderLayout.CENTER);
    frame.setContentPane(all);
    frame
        .getRootPane()
        .registerKeyboardAction(
            e -> frame.dispose(),
            KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
            JComponent.WHEN_IN_FOCUSED_WINDOW);
    frame.setDefaultCloseOperation(JFrame.DISPOSE_ON_CLOSE);
    refresh();
  }

  private JComponent scrolled() {
    words.setName("comparison.words");
    JScrollPane scroll = new JScrollPane(words);
    scroll.setHorizontalScrollBarPolicy(ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.setBorder(BorderFactory.createEmptyBorder());
    return scroll;
  }

  private JComponent figures(SavingMenu.Saver saver) {
    JPanel grid = new JPanel(new GridLayout(2, 2, 6, 6));
    grid.setBorder(BorderFactory.createEmptyBorder(6, 0, 6, 6));
    add(grid, "compare.turn", ComparisonFigures::turn, saver);
    add(grid, "compare.spacing", ComparisonFigures::spacing, saver);
    add(grid, "compare.speed", ComparisonFigures::speed, saver);
    add(grid, "compare.gap", ComparisonFigures::gap, saver);
    return grid;
  }

  private void add(
      JPanel grid,
      String name,
      Function<ComparisonFigures, Optional<Figure>> draw,
      SavingMenu.Saver saver) {
    FigureView view =
        new FigureView(
            model,
            name,
            outdated -> {
              ComparisonFigures figures = compared.figures().in(Look.ink());
              return () -> draw.apply(figures);
            },
            saver);
    views.add(view);
    grid.add(view);
  }

  /** Opens it over another window, the focus on the first picture. */
  void showOver(JFrame beside) {
    frame.setBounds(beside.getBounds());
    frame.setVisible(true);
    views.get(0).requestFocusInWindow();
  }

  /** Takes the look just worn. */
  void redress() {
    Redressing.of(frame);
    refresh();
  }

  private void refresh() {
    words.removeAll();
    say(compared.comparison());
    words.revalidate();
    words.repaint();
    views.forEach(FigureView::refresh);
  }

  private void say(Comparison c) {
    Prose verdict = prose(ComparisonText.verdict(c), () -> Look.strong(1.2));
    ComparisonText.counted(c).ifPresent(s -> prose(s, 1));
    verdict.setName("comparison.verdict");
    heading("compare.before");
    prose(compared.before() + "\n" + c.before().verdict(), 1);
    heading("compare.after");
    prose(compared.after() + "\n" + c.after().verdict(), 1);
    findings("compare.gone", c.gone());
    findings("compare.come", c.come());
    findings("compare.graver", c.graver());
    findings("compare.milder", c.milder());
    findings("compare.stayed", c.stayed());
    heading("compare.figures");
    for (Change change : c.changes()) {
      Prose name = prose(change.name(), 0.95);
      name.setForeground(Look.quiet());
      prose(
          Phrases.of(
              "compare.change",
              ComparisonText.value(change.before(), change.unit()),
              ComparisonText.value(change.after(), change.unit()),
              ComparisonText.outcome(change)),
          1);
    }
  }

  private void findings(String heading, List<RecordedFinding> findings) {
    if (!findings.isEmpty()) {
      heading(heading);
      Comparison c = compared.comparison();
      findings.forEach(f -> prose(f.title() + ComparisonText.regraded(c, f), 1));
    }
  }

  private void heading(String key) {
    prose(Phrases.of(key), () -> Look.strong(1.05));
  }

  private Prose prose(String text, double size) {
    return prose(text, () -> Look.regular(size));
  }

  private Prose prose(String text, Supplier<Font> type) {
    Prose p = new Prose();
    p.setFocusable(true);
    p.say(text, type);
    words.add(p, "wmin 40");
    return p;
  }

  /** The sentence that sums it up. */
  String verdict() {
    return Stream.of(words.getComponents())
        .filter(c -> "comparison.verdict".equals(c.getName()))
        .map(c -> ((Prose) c).getText())
        .findFirst()
        .orElseThrow();
  }
}
