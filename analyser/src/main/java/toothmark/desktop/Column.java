package toothmark.desktop;

import java.awt.Dimension;
import java.awt.LayoutManager;
import java.awt.Rectangle;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ScrollPaneConstants;
import javax.swing.Scrollable;

/** A panel that scrolls up and down only: as wide as its place, so that nothing is cut. */
class Column extends JPanel implements Scrollable {

  private static final long serialVersionUID = 1L;

  private static final int STEP = 16;

  Column(LayoutManager layout) {
    super(layout);
  }

  /** In a place that scrolls. */
  final JScrollPane scrolled() {
    JScrollPane s = new JScrollPane(this);
    s.setHorizontalScrollBarPolicy(ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
    s.setBorder(BorderFactory.createEmptyBorder());
    return s;
  }

  @Override
  public Dimension getPreferredScrollableViewportSize() {
    return getPreferredSize();
  }

  @Override
  public int getScrollableUnitIncrement(Rectangle r, int orientation, int direction) {
    return STEP;
  }

  @Override
  public int getScrollableBlockIncrement(Rectangle r, int orientation, int direction) {
    return r.height;
  }

  @Override
  public boolean getScrollableTracksViewportWidth() {
    return true;
  }

  @Override
  public boolean getScrollableTracksViewportHeight() {
    return false;
  }
}
