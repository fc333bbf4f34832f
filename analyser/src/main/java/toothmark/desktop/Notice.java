package toothmark.desktop;

import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.UIManager;
import net.miginfocom.swing.MigLayout;
import toothmark.findings.Severity;

/**
 * A line at the top for what went wrong, what was written, or a word of welcome, with the command
 * that goes on from there; can be put away.
 */
final class Notice extends JPanel {

  private static final long serialVersionUID = 1L;

  private final transient DeskModel model;
  private final transient Commands commands;
  private final Prose words = new Prose();
  private final JLabel sign = new JLabel();
  private final JButton on = new JButton();
  private Severity severity = Severity.NOTE;

  Notice(DeskModel model, Commands commands) {
    super(new MigLayout("insets 8 12 8 12, fillx, hidemode 3", "[][grow,fill][][]"));
    this.model = model;
    this.commands = commands;
    setName("notice");
    words.setName("notice.text");
    words.setFocusable(true);
    words.getAccessibleContext().setAccessibleName(Phrases.of("notice.name"));
    on.setName("notice.on");
    JButton away = new JButton(Phrases.of("notice.away"));
    away.addActionListener(e -> putAway());
    add(sign, "top");
    add(words, "growx, wmin 40");
    add(on, "top");
    add(away, "top");
    setVisible(false);
    model.bench.complaint.watch(c -> complaint(c));
  }

  @Override
  public void updateUI() {
    super.updateUI();
    setBorder(
        BorderFactory.createMatteBorder(0, 0, 1, 0, UIManager.getColor("Component.borderColor")));
    if (sign != null) { // not yet while the panel is made
      draw();
    }
  }

  private void draw() {
    sign.setIcon(new FindingsView.SeverityIcon(severity, Look.strong(1).getSize()));
  }

  private void complaint(Optional<Complaint> c) {
    setVisible(false);
    c.ifPresent(x -> show(Severity.FAULT, x.heading() + "\n" + x.detail(), x.cure()));
  }

  /** Nobody need see it any more; what goes wrong in the same way again is told again. */
  void putAway() {
    model.bench.complaint.set(Optional.empty());
    setVisible(false);
  }

  /** Says what to look at, or what was done. */
  void say(String text) {
    say(text, "");
  }

  /** The same, with the command that goes on from there; empty for none. */
  void say(String text, String command) {
    show(Severity.NOTE, text, command);
  }

  private void show(Severity how, String text, String command) {
    severity = how;
    draw();
    words.say(text, () -> Look.regular(1));
    on.setVisible(!command.isEmpty());
    if (!command.isEmpty()) {
      on.setAction(commands.get(command));
    }
    setVisible(true);
    revalidate();
  }
}
