package toothmark.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.Window;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.prefs.Preferences;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.AbstractButton;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Assumptions;
import toothmark.chart.Ink;

/** A real window, worked from a test: every touch happens on the event thread. */
final class DrivenWindow implements AutoCloseable {

  private static final long PATIENCE_MS = 60_000;
  private static final long CHECK_EVERY_MS = 30;
  private static final int QUIET_CHECKS = 5;

  private final ExecutorService background = Executors.newSingleThreadExecutor();
  private DeskWindow window;

  private DrivenWindow() {}

  /**
   * In the light look, as large as a small laptop's screen; a test without a display is skipped.
   */
  static DrivenWindow onALaptop() {
    Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "there is no display");
    run(() -> Look.wear(Ink.LIGHT));
    return show(new Dimension(1366, 768));
  }

  static DrivenWindow show(Dimension size) {
    DrivenWindow driven = new DrivenWindow();
    run(
        () -> {
          driven.window =
              new DeskWindow(
                  driven.background,
                  new RecentFiles(Preferences.userRoot().node("toothmark/desktop-test")));
          driven.window.files.browser = page -> {}; // a test starts no browser
          driven.window.frame.setSize(size);
          driven.window.frame.setVisible(true);
        });
    return driven;
  }

  /** Does something on the event thread. */
  void on(Consumer<DeskWindow> what) {
    run(() -> what.accept(window));
  }

  /** Asks something on the event thread. */
  <T> T ask(Function<DeskWindow, T> what) {
    Object[] answer = new Object[1];
    run(() -> answer[0] = what.apply(window));
    @SuppressWarnings("unchecked") // it was put there two lines before
    T t = (T) answer[0];
    return t;
  }

  /** To be touched on the event thread only. */
  JFrame frame() {
    return window.frame;
  }

  void run(String command) {
    on(w -> w.commands.run(command));
  }

  void open(Path capture) {
    on(w -> w.model.bench.open(Request.of(capture)));
    settle();
  }

  void openSample() {
    on(w -> w.files.openSample());
    settle();
  }

  /** Waits until nothing is being done for longer than the window waits before it begins. */
  void settle() {
    long until = System.currentTimeMillis() + PATIENCE_MS;
    for (int quiet = 0; quiet < QUIET_CHECKS; ) {
      if (System.currentTimeMillis() > until) {
        throw new IllegalStateException("the window is still busy after a minute");
      }
      boolean busy =
          ask(w -> w.model.bench.progress.get().isPresent() || w.model.bench.asides.get() > 0);
      quiet = busy ? 0 : quiet + 1;
      pause();
    }
    run(() -> {});
  }

  /** Waits for what comes by itself, such as a dialog after work on another thread. */
  void await(BooleanSupplier come) {
    long until = System.currentTimeMillis() + PATIENCE_MS;
    while (!this.<Boolean>ask(w -> come.getAsBoolean())) {
      if (System.currentTimeMillis() > until) {
        throw new IllegalStateException("it has not come after a minute");
      }
      pause();
    }
  }

  private static void pause() {
    try {
      Thread.sleep(CHECK_EVERY_MS);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Does something that may hold the event up with a question. */
  void begin(Consumer<DeskWindow> what) {
    DeskWindow w = window;
    SwingUtilities.invokeLater(() -> what.accept(w));
    settle();
  }

  /** As the button of the window's frame does. */
  void pressClose() {
    begin(w -> w.frame.dispatchEvent(new WindowEvent(w.frame, WindowEvent.WINDOW_CLOSING)));
  }

  /** Answers the question that is asked, or will be, by a button. */
  void answer(String button) {
    await(() -> offered(button).isPresent());
    on(w -> offered(button).orElseThrow().doClick());
    settle();
  }

  /** Chooses a file where one is asked for. */
  void choose(Path file) {
    await(() -> chooser().isPresent());
    begin(
        w -> {
          JFileChooser chooser = chooser().orElseThrow();
          chooser.setSelectedFile(file.toFile());
          chooser.approveSelection();
        });
  }

  /** Calls off where a file is asked for. */
  void chooseNothing() {
    await(() -> chooser().isPresent());
    on(w -> chooser().orElseThrow().cancelSelection());
    settle();
  }

  /** What a question says that is being asked. */
  static String question() {
    return dialogs()
        .flatMap(d -> inside(d, JLabel.class))
        .map(JLabel::getText)
        .filter(Objects::nonNull)
        .collect(Collectors.joining("\n"));
  }

  static Optional<JFileChooser> chooser() {
    return dialogs().flatMap(d -> inside(d, JFileChooser.class)).findFirst();
  }

  private static Optional<AbstractButton> offered(String button) {
    return dialogs()
        .flatMap(d -> inside(d, AbstractButton.class))
        .filter(b -> button.equals(b.getText()))
        .findFirst();
  }

  private static Stream<JDialog> dialogs() {
    return Arrays.stream(Window.getWindows())
        .filter(d -> d instanceof JDialog && d.isShowing())
        .map(JDialog.class::cast);
  }

  private static <T> Stream<T> inside(Container in, Class<T> kind) {
    return Arrays.stream(in.getComponents())
        .flatMap(
            c ->
                Stream.concat(
                    kind.isInstance(c) ? Stream.of(kind.cast(c)) : Stream.empty(),
                    c instanceof Container inner ? inside(inner, kind) : Stream.empty()));
  }

  static Container all(DeskWindow w) {
    return w.frame.getContentPane();
  }

  static void type(DeskWindow w, JobDraft.Field field, String text) {
    ((JTextComponent) named(all(w), "field." + field.path())).setText(text);
  }

  /** All words of a part and its parts. */
  static String words(Component part) {
    String own = part instanceof JTextComponent t ? t.getText() : "";
    return part instanceof Container inner
        ? Arrays.stream(inner.getComponents())
            .map(DrivenWindow::words)
            .reduce(own, (a, b) -> a + "\n" + b)
            .strip()
        : own;
  }

  /** The part of that name. */
  static Component named(Container in, String name) {
    return find(in, name).orElseThrow(() -> new IllegalArgumentException("no " + name));
  }

  private static Optional<Component> find(Container in, String name) {
    return Arrays.stream(in.getComponents())
        .flatMap(
            part ->
                name.equals(part.getName())
                    ? Stream.of(part)
                    : part instanceof Container inner ? find(inner, name).stream() : Stream.empty())
        .findFirst();
  }

  private static void run(Runnable what) {
    try {
      SwingUtilities.invokeAndWait(what);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof RuntimeException r) {
        throw r;
      }
      if (e.getCause() instanceof Error r) {
        throw r;
      }
      throw new IllegalStateException(e.getCause());
    }
  }

  @Override
  public void close() {
    run(() -> window.frame.dispose());
    background.shutdownNow();
  }
}
