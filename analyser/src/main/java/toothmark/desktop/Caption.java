package toothmark.desktop;

import java.awt.Color;
import java.awt.Font;
import java.util.function.Supplier;
import javax.swing.JLabel;
import javax.swing.UIManager;

/** A label of its own type or colour, which also follows when the look of open windows changes. */
final class Caption extends JLabel {

  private static final long serialVersionUID = 1L;

  private final transient Supplier<Font> type;
  private final transient Supplier<Color> colour;

  private Caption(String text, Supplier<Font> type, Supplier<Color> colour) {
    super(text);
    this.type = type;
    this.colour = colour;
    dress();
  }

  /** In ordinary colour. */
  static Caption of(String text, Supplier<Font> type) {
    return new Caption(text, type, () -> UIManager.getColor("Label.foreground"));
  }

  /** In a colour that steps back. */
  static Caption quiet(String text, Supplier<Font> type) {
    return new Caption(text, type, Look::quiet);
  }

  @Override
  public void updateUI() {
    super.updateUI();
    if (type != null) { // not yet while a label is made
      dress();
    }
  }

  private void dress() {
    setFont(type.get());
    setForeground(colour.get());
  }
}
