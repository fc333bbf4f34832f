package toothmark.desktop;

import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.UIManager;
import net.miginfocom.swing.MigLayout;
import toothmark.findings.Severity;

/** A line at the top for what went wrong, or for a word of welcome; can be put away. */
final class Notice extends JPanel {

  private static final long serialVersionUID = 1L;

  private final Prose words = new Prose();
  private final JLabel sign = new JLabel();

  Notice(DeskModel model) {
    super(new MigLayout("insets 8 12 8 12, fillx, hidemode 3", "[][grow,fill][]"));
    setName("notice");
    words.setName("notice.text");
    words.setFocusable(true);
    words.getAccessibleContext().setAccessibleName(Phrases.of("notice.name"));
    JButton away = new JButton(Phrases.of("notice.away"));
    away.addActionListener(e -> putAway());
    add(sign, "top");
    add(words, "growx, wmin 40");
    add(away, "top");
    setVisible(false);
    model.bench.complaint.watch(c -> complaint(c));
  }

  @Override
  public void updateUI() {
    super.updateUI();
    setBorder(
        BorderFactory.createMatteBorder(0, 0, 1, 0, UIManager.getColor("Component.borderColor")));
  }

  private void complaint(Optional<Complaint> c) {
    if (c.isPresent()) {
      sign.setIcon(new FindingsView.SeverityIcon(Severity.FAULT, Look.strong(1).getSize()));
      show(c.get().heading() + "\n" + c.get().detail());
    } else {
      putAway();
    }
  }

  void putAway() {
    setVisible(false);
  }

  /** Says what to look at. */
  void welcome(String text) {
    sign.setIcon(new FindingsView.SeverityIcon(Severity.NOTE, Look.strong(1).getSize()));
    show(text);
  }

  private void show(String text) {
    words.say(text, () -> Look.regular(1));
    setVisible(true);
    revalidate();
  }
}
