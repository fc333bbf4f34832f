package toothmark.desktop;

import java.nio.file.Path;
import javax.swing.ButtonGroup;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.event.MenuEvent;
import javax.swing.event.MenuListener;

/** The menu bar: every command in words, with its key. */
final class Menus {

  private static final String LINE = "-";

  private final Commands commands;
  private final FileDoor files;
  private final RecentFiles recent;

  Menus(Commands commands, FileDoor files, RecentFiles recent) {
    this.commands = commands;
    this.files = files;
    this.recent = recent;
  }

  JMenuBar bar() {
    JMenuBar bar = new JMenuBar();
    JMenu file = menu("menu.file", "open");
    file.add(recent());
    items(
        file,
        "openAgain",
        "sample",
        "openBeside",
        LINE,
        "openJob",
        "openLog",
        LINE,
        "compare",
        "report",
        "savePicture",
        "showFolder",
        LINE,
        "newWindow",
        "close");
    bar.add(file);
    bar.add(menu("menu.job", "undo", "redo", LINE, "saveJob", LINE, "job"));
    bar.add(
        menu(
            "menu.go",
            "nextEvent",
            "previousEvent",
            LINE,
            "zoomIn",
            "zoomOut",
            "showAll",
            LINE,
            "play",
            "toothOn",
            "toothBack"));
    JMenu view =
        menu(
            "menu.view",
            "findings",
            "measures",
            "whatIf",
            "trace",
            "pictures",
            LINE,
            "angle",
            "height",
            LINE,
            "tile");
    view.add(new JCheckBoxMenuItem(commands.get("together")));
    view.addSeparator();
    looks(view);
    items(view, LINE, "larger", "smaller");
    bar.add(view);
    bar.add(menu("menu.measure", "cursorFirst", "cursorSecond", "cursorsOff"));
    bar.add(menu("menu.bench", "aid.piston", "aid.tape", "aid.strobe", "aid.firing"));
    bar.add(menu("menu.help", "keys"));
    return bar;
  }

  private JMenu menu(String key, String... names) {
    JMenu menu = new JMenu(Phrases.of(key));
    menu.setMnemonic(Phrases.of(key).charAt(0));
    items(menu, names);
    return menu;
  }

  private void items(JMenu menu, String... names) {
    for (String name : names) {
      if (name.equals(LINE)) {
        menu.addSeparator();
      } else {
        menu.add(commands.item(name));
      }
    }
  }

  private void looks(JMenu view) {
    ButtonGroup group = new ButtonGroup();
    for (String name : new String[] {"light", "dark"}) {
      JRadioButtonMenuItem item = new JRadioButtonMenuItem(commands.get(name));
      item.setSelected(name.equals(recent.isDark() ? "dark" : "light"));
      group.add(item);
      view.add(item);
    }
  }

  private JMenu recent() {
    JMenu menu = new JMenu(Phrases.of("menu.recent"));
    menu.addMenuListener(
        new MenuListener() {
          @Override
          public void menuSelected(MenuEvent e) {
            menu.removeAll();
            recent.files().forEach(f -> menu.add(item(f)));
            if (menu.getItemCount() == 0) {
              JMenuItem none = new JMenuItem(Phrases.of("menu.recent.none"));
              none.setEnabled(false);
              menu.add(none);
            }
          }

          @Override
          public void menuDeselected(MenuEvent e) {
            // filled anew each time
          }

          @Override
          public void menuCanceled(MenuEvent e) {
            // filled anew each time
          }
        });
    return menu;
  }

  private JMenuItem item(Path file) {
    Path folder = file.getParent();
    String where = folder == null ? "" : "  –  " + folder;
    JMenuItem item = new JMenuItem(file.getFileName() + where);
    item.addActionListener(e -> files.open(file));
    return item;
  }
}
