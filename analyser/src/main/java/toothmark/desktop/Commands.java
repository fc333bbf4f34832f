package toothmark.desktop;

import java.awt.Insets;
import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JMenuItem;
import javax.swing.KeyStroke;

/** Everything that can be done, under one name each: menus, buttons and keys all lead here. */
final class Commands {

  private static final Insets NARROW = new Insets(2, 6, 2, 6);

  private final Map<String, Action> actions = new LinkedHashMap<>();

  /**
   * Adds a command; its words are {@code command.NAME}, its help {@code command.NAME.help} where
   * there is more to say.
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
    Phrases.find("command." + name + ".help")
        .ifPresent(help -> action.putValue(Action.SHORT_DESCRIPTION, help));
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

  /** The names of all of them. */
  Set<String> names() {
    return actions.keySet();
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

  /** A button, with narrow sides so that three fit side by side. */
  JButton button(String name) {
    JButton button = new JButton(get(name));
    button.setName("button." + name);
    button.setMargin(NARROW);
    return button;
  }

  /** The commands that have a key, and the keys, in the order in which they were added. */
  Map<String, String> keys() {
    Map<String, String> keys = new LinkedHashMap<>();
    actions
        .values()
        .forEach(
            a -> {
              if (a.getValue(Action.ACCELERATOR_KEY) instanceof KeyStroke stroke) {
                keys.put(String.valueOf(a.getValue(Action.NAME)), said(stroke));
              }
            });
    return keys;
  }

  private static String said(KeyStroke stroke) {
    String held = InputEvent.getModifiersExText(stroke.getModifiers());
    String key = KeyEvent.getKeyText(stroke.getKeyCode());
    return held.isEmpty() ? key : held + "+" + key;
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
