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
  private final Idle idle;

  /** What is seen of the frame without the focus. */
  enum Idle {
    /** A quiet line. */
    LINE,
    /** Nothing. */
    NOTHING
  }

  private FocusRing(JComponent picture, Idle idle) {
    this.picture = picture;
    this.idle = idle;
  }

  static void on(JComponent picture, Idle idle) {
    FocusRing ring = new FocusRing(picture, idle);
    picture.addFocusListener(ring);
    ring.focusLost(null);
  }

  @Override
  public void focusGained(FocusEvent e) {
    frame(UIManager.getColor("Component.focusColor"));
  }

  @Override
  public void focusLost(FocusEvent e) {
    frame(idle == Idle.LINE ? UIManager.getColor("Component.borderColor") : Look.ink().paper());
  }

  private void frame(Color colour) {
    picture.setBorder(BorderFactory.createLineBorder(colour == null ? Color.GRAY : colour, WIDTH));
  }
}
