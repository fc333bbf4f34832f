package toothmark.desktop;

import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Insets;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.UIManager;
import javax.swing.border.AbstractBorder;

/** Shows which picture has the focus, as a frame around it in the colours of the look just worn. */
final class FocusRing extends AbstractBorder implements FocusListener {

  private static final long serialVersionUID = 1L;

  private static final int WIDTH = 2;

  private final Idle idle;

  /** What is seen of the frame without the focus. */
  enum Idle {
    /** A quiet line. */
    LINE,
    /** Nothing. */
    NOTHING
  }

  private FocusRing(Idle idle) {
    this.idle = idle;
  }

  static void on(JComponent picture, Idle idle) {
    FocusRing ring = new FocusRing(idle);
    picture.addFocusListener(ring);
    picture.setBorder(ring);
  }

  @Override
  public void focusGained(FocusEvent e) {
    e.getComponent().repaint();
  }

  @Override
  public void focusLost(FocusEvent e) {
    e.getComponent().repaint();
  }

  @Override
  public void paintBorder(Component picture, Graphics g, int x, int y, int width, int height) {
    BorderFactory.createLineBorder(colour(picture.isFocusOwner()), WIDTH)
        .paintBorder(picture, g, x, y, width, height);
  }

  private Color colour(boolean focused) {
    if (!focused && idle == Idle.NOTHING) {
      return Look.ink().paper();
    }
    return UIManager.getColor(focused ? "Component.focusColor" : "Component.borderColor");
  }

  @Override
  public Insets getBorderInsets(Component picture, Insets insets) {
    insets.set(WIDTH, WIDTH, WIDTH, WIDTH);
    return insets;
  }
}
