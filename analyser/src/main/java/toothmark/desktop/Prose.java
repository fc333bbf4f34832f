package toothmark.desktop;

import java.awt.Dimension;
import java.awt.Font;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import javax.swing.text.DefaultCaret;

/** A label of several lines: wraps, can be selected and copied, and is read out as text. */
final class Prose extends JTextArea {

  private static final long serialVersionUID = 1L;

  private transient Supplier<Font> type;

  Prose() {
    setEditable(false);
    setLineWrap(true);
    setWrapStyleWord(true);
    setOpaque(false);
    setBorder(BorderFactory.createEmptyBorder());
    setFocusable(false);
    setCaret(new Unseen());
  }

  /** Shows a text, in a type that is asked for anew when the look changes; hides without one. */
  void say(String text, Supplier<Font> type) {
    this.type = type;
    setText(text);
    dress();
    setVisible(!text.isEmpty());
  }

  @Override
  public void updateUI() {
    super.updateUI();
    if (type != null) { // nothing was said yet
      dress();
    }
  }

  private void dress() {
    setFont(type.get());
    setForeground(UIManager.getColor("Label.foreground"));
  }

  /** Marks what is selected to be copied, but shows no place to type at. */
  private static final class Unseen extends DefaultCaret {

    private static final long serialVersionUID = 1L;

    Unseen() {
      setUpdatePolicy(NEVER_UPDATE); // what is said anew scrolls nothing
    }

    @Override
    public void setVisible(boolean visible) {
      super.setVisible(false);
    }
  }

  /** Its height follows from its width, which it knows only once it was laid out. */
  @Override
  public void setBounds(int x, int y, int width, int height) {
    boolean rewrapped = width != getWidth();
    super.setBounds(x, y, width, height);
    if (rewrapped) {
      SwingUtilities.invokeLater(this::revalidate); // the layout that goes on would forget it
    }
  }

  /** As narrow as its place wants it: a text area would insist on the width it had before. */
  @Override
  public Dimension getMinimumSize() {
    return new Dimension(40, getFontMetrics(getFont()).getHeight());
  }
}
