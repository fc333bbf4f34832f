package toothmark.desktop;

import java.awt.AWTError;
import java.awt.Frame;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.prefs.Preferences;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import toothmark.chart.Ink;

/** Opens the window. */
public final class Desk {

  private static final List<DeskWindow> OPEN = new ArrayList<>();
  private static final CountDownLatch ALL_CLOSED = new CountDownLatch(1);

  /** Held, so that what is set on it lasts: it would tell of a new folder at the first start. */
  private static final Logger OF_PREFERENCES = Logger.getLogger("java.util.prefs");

  /** The windows whose traces go together. */
  static final Together TOGETHER = new Together();

  /** What the windows are called. */
  static final Titles TITLES = new Titles();

  private Desk() {}

  /**
   * Opens a window and returns when the last one is closed.
   *
   * @param captures what to show, several in windows side by side; empty for nothing, or for the
   *     bundled sample at the first start
   * @throws HeadlessException if there is no display
   */
  public static void run(List<Path> captures) {
    needDisplay();
    OF_PREFERENCES.setLevel(Level.WARNING);
    System.setProperty("apple.laf.useScreenMenuBar", "true");
    SwingUtilities.invokeLater(
        () -> {
          RecentFiles recent = recent();
          Look.enlarge(recent.enlarged());
          Look.wear(recent.isDark() ? Ink.DARK : Ink.LIGHT);
          boolean first = recent.isFirstStart();
          DeskWindow window = show(recent);
          if (captures.isEmpty() && first) {
            window.files.openSample();
          }
          captures.stream().limit(1).forEach(window::open);
          if (captures.size() > 1) {
            openBeside(captures.stream().skip(1).map(Request::of).toList());
          }
        });
    try {
      ALL_CLOSED.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void needDisplay() {
    try {
      if (GraphicsEnvironment.isHeadless()) {
        throw new HeadlessException(Phrases.of("complaint.display"));
      }
      GraphicsEnvironment.getLocalGraphicsEnvironment();
    } catch (AWTError e) {
      HeadlessException none = new HeadlessException(Phrases.of("complaint.display"));
      none.initCause(e);
      throw none;
    }
  }

  private static RecentFiles recent() {
    return new RecentFiles(Preferences.userRoot().node("toothmark/desktop"));
  }

  /** One more window, for another capture beside this one. */
  static DeskWindow newWindow() {
    return show(recent());
  }

  /** Opens captures in windows of their own, all windows side by side. */
  static void openBeside(List<Request> captures) {
    captures.forEach(c -> newWindow().files.openRequest(c));
    tile();
  }

  /** Lays all windows side by side. */
  static void tile() {
    tile(
        OPEN.stream().map(w -> w.frame).toList(),
        GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds());
  }

  /** Lays windows side by side on a part of the screen, in rows of about as many as there are. */
  static void tile(List<JFrame> frames, Rectangle on) {
    int columns = (int) Math.ceil(Math.sqrt(frames.size()));
    int rows = (frames.size() + columns - 1) / Math.max(1, columns);
    for (int i = 0; i < frames.size(); i++) {
      int row = i / columns;
      int inRow = Math.min(columns, frames.size() - row * columns);
      int x = on.width * (i % columns) / inRow;
      int y = on.height * row / rows;
      frames.get(i).setExtendedState(Frame.NORMAL);
      frames
          .get(i)
          .setBounds(
              on.x + x,
              on.y + y,
              on.width * (i % columns + 1) / inRow - x,
              on.height * (row + 1) / rows - y);
    }
  }

  private static DeskWindow show(RecentFiles recent) {
    ExecutorService background =
        Executors.newSingleThreadExecutor(
            r -> {
              Thread t = new Thread(r, "bench");
              t.setDaemon(true);
              return t;
            });
    DeskWindow window = new DeskWindow(background, recent);
    OPEN.add(window);
    window.frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosed(WindowEvent e) {
            background.shutdown();
            OPEN.remove(window);
            if (OPEN.isEmpty()) {
              ALL_CLOSED.countDown();
            }
          }
        });
    window.frame.setVisible(true);
    return window;
  }

  /** Draws all windows anew after a change of look, and remembers it. */
  static void redressAll(Ink ink) {
    recent().setLook(ink == Ink.DARK, Look.enlarged());
    OPEN.forEach(DeskWindow::redress);
  }
}
