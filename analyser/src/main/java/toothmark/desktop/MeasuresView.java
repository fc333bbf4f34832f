package toothmark.desktop;

import java.util.List;
import net.miginfocom.swing.MigLayout;
import toothmark.report.VerdictText;

/** The figures of the examination, each with its doubt. */
final class MeasuresView extends Column {

  private static final long serialVersionUID = 1L;

  private static final int ONE_LINE = 10_000;

  private final transient DeskModel model;

  MeasuresView(DeskModel model) {
    super(new MigLayout("insets 10, gapy 6, fillx, wrap 1", "[grow,fill]"));
    this.model = model;
    setName("measures");
    model.bench.session.watch(s -> refresh());
  }

  private void refresh() {
    removeAll();
    model.examination().ifPresent(e -> VerdictText.of(e, List.of(), ONE_LINE).forEach(this::line));
    revalidate();
    repaint();
  }

  private void line(VerdictText.Line line) {
    if (line.role() == VerdictText.Role.PLAIN && !line.label().isBlank()) {
      Prose value = new Prose();
      value.setFocusable(true);
      value.say(line.text(), () -> Look.regular(1));
      value.getAccessibleContext().setAccessibleName(line.label());
      add(Caption.quiet(line.label(), () -> Look.strong(0.95)), "gaptop 2, gapbottom 0");
      add(value, "wmin 40");
    }
  }
}
