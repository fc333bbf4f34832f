package toothmark.desktop;

import java.awt.Color;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.UIManager;

/** Shows which picture has the focus, as a frame around it. */
final class FocusRing implements FocusListener {

  private static final int WIDTH = 2;

  private final JComponent picture;

  private FocusRing(JComponent picture) {
    this.picture = picture;
  }

  static void on(JComponent picture) {
    FocusRing ring = new FocusRing(picture);
    picture.addFocusListener(ring);
    ring.focusLost(null);
  }

  @Override
  public void focusGained(FocusEvent e) {
    frame(UIManager.getColor("Component.focusColor"));
  }

  @Override
  public void focusLost(FocusEvent e) {
    frame(UIManager.getColor("Component.borderColor"));
  }

  private void frame(Color colour) {
    picture.setBorder(BorderFactory.createLineBorder(colour == null ? Color.GRAY : colour, WIDTH));
  }
}
