package toothmark.desktop;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** Tells of every change of a text. */
record Changed(Runnable then) implements DocumentListener {

  @Override
  public void insertUpdate(DocumentEvent e) {
    then.run();
  }

  @Override
  public void removeUpdate(DocumentEvent e) {
    then.run();
  }

  @Override
  public void changedUpdate(DocumentEvent e) {
    // styles are not text
  }
}
