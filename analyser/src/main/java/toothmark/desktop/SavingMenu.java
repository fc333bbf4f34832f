package toothmark.desktop;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import toothmark.chart.Figure;

/** Offers to save a picture: as a drawing, as an image, as its points. */
final class SavingMenu {

  private SavingMenu() {}

  /** Saves a figure under a name with an ending, which says the format. */
  interface Saver {
    void save(Figure figure, String fileName);
  }

  /** Adds an item for each format; {@code figure} is asked when one is chosen. */
  static void add(JPopupMenu menu, String name, Supplier<Optional<Figure>> figure, Saver saver) {
    for (String ending : List.of("svg", "png", "csv")) {
      JMenuItem item = new JMenuItem(Phrases.of("picture.save." + ending));
      item.setName("save." + ending);
      item.addActionListener(e -> figure.get().ifPresent(f -> saver.save(f, name + "." + ending)));
      menu.add(item);
    }
  }
}
