package toothmark.desktop;

import java.awt.Rectangle;
import java.util.stream.Stream;
import javax.swing.JTabbedPane;
import javax.swing.JViewport;
import javax.swing.SwingUtilities;

/** Tabs in one row however narrow their place, scrolled so that the chosen one is seen whole. */
final class OneRow {

  private OneRow() {}

  static void of(JTabbedPane tabs) {
    tabs.setTabLayoutPolicy(JTabbedPane.SCROLL_TAB_LAYOUT);
    tabs.addChangeListener(e -> SwingUtilities.invokeLater(() -> bringIntoView(tabs)));
  }

  /** The buttons that come where there are more tabs than room may cover the chosen one. */
  private static void bringIntoView(JTabbedPane tabs) {
    Rectangle tab = tabs.getUI().getTabBounds(tabs, tabs.getSelectedIndex());
    Stream.of(tabs.getComponents())
        .filter(JViewport.class::isInstance)
        .map(JViewport.class::cast)
        .forEach(v -> v.scrollRectToVisible(SwingUtilities.convertRectangle(tabs, tab, v)));
  }
}
