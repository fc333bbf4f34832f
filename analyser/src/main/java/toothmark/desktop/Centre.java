package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JSplitPane;

/**
 * The pictures in the middle: the trace above the figures where the window is high enough for both,
 * else the trace as the first of the figures, so that none is too small to read.
 */
final class Centre extends JPanel {

  private static final long serialVersionUID = 1L;

  private static final int ROOM_FOR_BOTH = 640;
  private static final double TRACE_SHARE = 0.52;

  private final JComponent trace;
  private final transient Pictures pictures;
  private boolean together;

  Centre(DeskModel model, JComponent trace, Pictures pictures) {
    super(new BorderLayout());
    this.trace = trace;
    this.pictures = pictures;
    setName("centre");
    apart();
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent e) {
            arrange();
          }
        });
    model.traceAsked.watch(n -> pictures.showTrace());
  }

  private void arrange() {
    boolean room = getHeight() >= ROOM_FOR_BOTH * Look.scale();
    if (room && !together) {
      together();
    } else if (!room && together) {
      apart();
    }
  }

  private void together() {
    together = true;
    pictures.removeTrace();
    removeAll();
    // a new one each time: a split pane that is emptied remembers sizes that are no longer right
    JSplitPane split = new JSplitPane(JSplitPane.VERTICAL_SPLIT, trace, pictures.tabs());
    split.setResizeWeight(TRACE_SHARE);
    split.setBorder(BorderFactory.createEmptyBorder());
    add(split, BorderLayout.CENTER);
    split.setDividerLocation((int) (getHeight() * TRACE_SHARE));
    revalidate();
  }

  private void apart() {
    together = false;
    removeAll();
    pictures.addTrace(trace);
    add(pictures.tabs(), BorderLayout.CENTER);
    revalidate();
  }
}
