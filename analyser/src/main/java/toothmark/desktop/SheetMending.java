package toothmark.desktop;

import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.text.BadLocationException;
import net.miginfocom.swing.MigLayout;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetText;

/** A job sheet that cannot be read, as it is written, to be mended; checked while one types. */
final class SheetMending extends JPanel {

  private static final long serialVersionUID = 1L;

  private static final int ROWS = 10;

  private final transient JobModel job;
  private final Prose complaint = new Prose();
  private final JTextArea text = new JTextArea(ROWS, 20);
  private final JButton use;

  SheetMending(JobModel job, Commands commands) {
    super(new MigLayout("insets 0 0 12 0, gapy 4, fillx, wrap 1", "[grow,fill]"));
    this.job = job;
    setName("mending");
    text.setName("mending.text");
    text.getAccessibleContext().setAccessibleName(Phrases.of("mend.text"));
    text.setFocusTraversalKeys(java.awt.KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
    text.setFocusTraversalKeys(java.awt.KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
    text.getDocument().addDocumentListener(new Changed(this::check));
    complaint.setName("mending.complaint");
    complaint.setFocusable(true);
    use = new JButton(commands.add("useMended", "", this::use));
    add(Caption.of(Phrases.of("mend.text"), () -> Look.strong(1.05)), "wmin 40");
    add(complaint, "wmin 40, hidemode 3");
    add(new JScrollPane(text), "wmin 40");
    add(use, "split 2, growx 0");
    add(new JButton(commands.get("openAgain")), "growx 0");
    job.unreadable.follow(t -> show(t));
  }

  private void show(Optional<JobSheetText> unreadable) {
    setVisible(unreadable.isPresent());
    text.setText(unreadable.map(JobSheetText::toml).orElse(""));
    fault().flatMap(e -> e.line().stream().boxed().findFirst()).ifPresent(this::pickLine);
  }

  private void pickLine(int line) {
    try {
      int i = Math.min(line, text.getLineCount()) - 1;
      text.select(text.getLineStartOffset(i), text.getLineEndOffset(i));
      text.getCaret().setSelectionVisible(true); // also before one came here
    } catch (BadLocationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Puts the focus on the line that is wrong. */
  @Override
  public boolean requestFocusInWindow() {
    return text.requestFocusInWindow();
  }

  private Optional<JobSheetText> typed() {
    return job.unreadable.get().map(t -> new JobSheetText(t.name(), text.getText(), t.folder()));
  }

  private Optional<JobSheetException> fault() {
    try {
      if (typed().isPresent()) {
        typed().get().sheet();
      }
      return Optional.empty();
    } catch (JobSheetException e) {
      return Optional.of(e);
    }
  }

  private void check() {
    Optional<JobSheetException> fault = fault();
    complaint.say(
        fault.map(JobSheetException::getMessage).orElse(Phrases.of("mend.right")),
        () -> Look.regular(0.95));
    use.getAction().setEnabled(fault.isEmpty());
    revalidate();
  }

  private void use() {
    try {
      if (typed().isPresent()) {
        job.mend(typed().get());
      }
    } catch (JobSheetException e) {
      throw new IllegalStateException("a sheet without fault was refused", e);
    }
  }
}
