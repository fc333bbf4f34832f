package toothmark.desktop;

import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.JComponent;
import javax.swing.JMenuItem;
import javax.swing.KeyStroke;

/** Everything that can be done, under one name each: menus, buttons and keys all lead here. */
final class Commands {

  private final Map<String, Action> actions = new LinkedHashMap<>();

  /**
   * Adds a command; its words are {@code command.NAME}, its help {@code command.NAME.help}.
   *
   * @param key as {@link KeyStroke#getKeyStroke(String)} reads it; {@code menu} stands for Ctrl or
   *     Command; empty for none
   */
  Action add(String name, String key, Runnable what) {
    Action action =
        new AbstractAction(Phrases.of("command." + name)) {
          private static final long serialVersionUID = 1L;

          @Override
          public void actionPerformed(ActionEvent e) {
            what.run();
          }
        };
    if (!key.isEmpty()) {
      action.putValue(Action.ACCELERATOR_KEY, stroke(key));
    }
    action.putValue(Action.ACTION_COMMAND_KEY, name);
    actions.put(name, action);
    return action;
  }

  Action get(String name) {
    Action a = actions.get(name);
    if (a == null) {
      throw new IllegalArgumentException("no command is called " + name);
    }
    return a;
  }

  /** Runs a command, as a click on it would. */
  void run(String name) {
    get(name).actionPerformed(new ActionEvent(this, ActionEvent.ACTION_PERFORMED, name));
  }

  JMenuItem item(String name) {
    JMenuItem item = new JMenuItem(get(name));
    item.setName("menu." + name);
    return item;
  }

  /** Lets a single key run a command while the focus is on a picture, where nobody types. */
  void bind(JComponent picture, String key, String name) {
    picture.getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(key), name);
    picture.getActionMap().put(name, get(name));
  }

  private static KeyStroke stroke(String key) {
    if (!key.startsWith("menu ")) {
      return KeyStroke.getKeyStroke(key);
    }
    KeyStroke plain = KeyStroke.getKeyStroke(key.substring("menu ".length()));
    return KeyStroke.getKeyStroke(
        plain.getKeyCode(),
        plain.getModifiers() | Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx());
  }
}
