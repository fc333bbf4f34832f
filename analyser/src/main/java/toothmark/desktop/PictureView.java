package toothmark.desktop;

import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/** A picture that is drawn by hand: takes the focus and shows it, and has a name to be read out. */
abstract class PictureView extends JComponent implements Accessible {

  private static final long serialVersionUID = 1L;

  PictureView(String name, String spokenName, FocusRing.Idle idle) {
    setName(name);
    setFocusable(true);
    setOpaque(true);
    getAccessibleContext().setAccessibleName(spokenName);
    FocusRing.on(this, idle);
  }

  @Override
  public final AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext = new Spoken();
    }
    return accessibleContext;
  }

  /** What is read out of it. */
  private final class Spoken extends AccessibleJComponent {

    private static final long serialVersionUID = 1L;

    @Override
    public AccessibleRole getAccessibleRole() {
      return AccessibleRole.CANVAS;
    }
  }
}
