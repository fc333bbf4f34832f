package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import javax.swing.KeyStroke;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetText;

/** The sums at the bench, beside the window; what was typed stays while the window is open. */
final class AidsWindow {

  private static final Dimension SIZE = new Dimension(1000, 640);

  final JDialog dialog;
  final Notice notice;
  private final JTabbedPane tabs = new JTabbedPane();
  private final Map<String, AidView> views = new LinkedHashMap<>();

  private JobSheetText opened;

  AidsWindow(JFrame beside, JobModel job, Notice notice, Consumer<Aid.Printed> save) {
    this.notice = notice;
    dialog = new JDialog(beside, Phrases.of("aids.name"));
    dialog.setName("aids");
    opened = job.draft.get().opened().text();
    for (Aid aid : Aids.all(job.asked.get())) {
      AidView view = new AidView(aid, save);
      views.put(aid.name(), view);
      tabs.addTab(Phrases.of("aid." + aid.name()), view);
    }
    job.asked.watch(s -> take(s, job.draft.get().opened().text()));
    tabs.getAccessibleContext().setAccessibleName(Phrases.of("aids.name"));
    JPanel all = new JPanel(new BorderLayout());
    all.add(notice, BorderLayout.NORTH);
    all.add(tabs, BorderLayout.CENTER);
    dialog.setContentPane(all);
    dialog
        .getRootPane()
        .registerKeyboardAction(
            e -> dialog.setVisible(false),
            KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
            JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
    double scale = Look.scale();
    Rectangle screen = beside.getGraphicsConfiguration().getBounds();
    dialog.setSize(
        (int) Math.min(SIZE.width * scale, 0.95 * screen.width),
        (int) Math.min(SIZE.height * scale, 0.9 * screen.height));
    dialog.setLocationRelativeTo(beside);
  }

  /** The sheet of the engine that is open now. */
  private void take(JobSheet sheet, JobSheetText text) {
    boolean another = text != opened;
    opened = text;
    Aids.all(sheet).forEach(a -> views.get(a.name()).take(a, another));
  }

  void show(String aid) {
    tabs.setSelectedComponent(views.get(aid));
    dialog.setVisible(true);
  }

  /** Says and draws everything anew, as after a change of colours. */
  void refresh() {
    views.values().forEach(AidView::refresh);
  }
}
