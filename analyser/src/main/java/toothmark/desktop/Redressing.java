package toothmark.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.Window;
import java.awt.event.HierarchyEvent;
import java.awt.event.HierarchyListener;
import javax.swing.JComponent;
import javax.swing.JMenu;
import javax.swing.JPopupMenu;
import javax.swing.JTabbedPane;
import javax.swing.RootPaneContainer;

/**
 * Puts what is open into the look just worn: what is seen at once, a tab behind another and a
 * window that is put away when they come to front, since a form takes longer than one waits.
 */
final class Redressing {

  private static final String LATER = "redressedLater";

  private Redressing() {}

  static void of(Window window) {
    if (window.isShowing()) {
      now(window);
      window.revalidate();
      window.repaint();
    } else if (window instanceof RootPaneContainer in) {
      later(in.getRootPane());
    }
  }

  private static void now(Component part) {
    if (part instanceof JComponent c) {
      c.updateUI();
      JPopupMenu menu = c.getComponentPopupMenu();
      if (menu != null) {
        now(menu);
      }
    }
    Component[] inner =
        part instanceof JMenu m
            ? m.getMenuComponents()
            : part instanceof Container c ? c.getComponents() : new Component[0];
    for (Component c : inner) {
      if (part instanceof JTabbedPane && !c.isVisible() && c instanceof JComponent behind) {
        later(behind);
      } else {
        now(c);
      }
    }
  }

  private static void later(JComponent part) {
    if (part.getClientProperty(LATER) == null) {
      Shown shown = new Shown(part);
      part.putClientProperty(LATER, shown);
      part.addHierarchyListener(shown);
    }
  }

  /** Waits until a part is seen. */
  private record Shown(JComponent part) implements HierarchyListener {

    @Override
    public void hierarchyChanged(HierarchyEvent e) {
      if (part.isShowing()) {
        part.removeHierarchyListener(this);
        part.putClientProperty(LATER, null);
        now(part);
        part.revalidate();
        part.repaint();
      }
    }
  }
}
