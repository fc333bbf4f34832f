package toothmark.desktop;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;

/** Every key and what the mouse does, beside the window; Escape puts it away. */
final class KeysWindow {

  private static final String WIDE = "span 2, growx, wmin 40";

  private KeysWindow() {}

  static JDialog show(JFrame beside, Commands commands) {
    JDialog dialog = new JDialog(beside, Phrases.of("keys.name"));
    dialog.setName("keys");
    Column all = new Column(new MigLayout("insets 14, gapx 24, gapy 4, wrap 2", "[][grow,fill]"));
    heading(all, "keys.trace");
    text(all, "keys.trace.text");
    heading(all, "keys.mouse");
    text(all, "keys.mouse.text");
    heading(all, "keys.anywhere");
    commands
        .keys()
        .forEach(
            (name, key) -> {
              all.add(new JLabel(key));
              all.add(new JLabel(name));
            });
    dialog.setContentPane(all.scrolled());
    dialog
        .getRootPane()
        .registerKeyboardAction(
            e -> dialog.dispose(),
            KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
            JComponent.WHEN_IN_FOCUSED_WINDOW);
    Rectangle screen = beside.getGraphicsConfiguration().getBounds();
    dialog.setSize(
        new Dimension(
            (int) Math.min(620 * Look.scale(), screen.width),
            (int) Math.min(660 * Look.scale(), 0.9 * screen.height)));
    dialog.setLocationRelativeTo(beside);
    dialog.setVisible(true);
    return dialog;
  }

  private static void heading(Column in, String key) {
    in.add(Caption.of(Phrases.of(key), () -> Look.strong(1.05)), "gaptop 8, " + WIDE);
  }

  private static void text(Column in, String key) {
    Prose prose = new Prose();
    prose.setFocusable(true);
    prose.say(Phrases.of(key), () -> Look.regular(1));
    in.add(prose, WIDE);
  }
}
