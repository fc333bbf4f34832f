package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import toothmark.report.VerdictText.Line;
import toothmark.report.VerdictText.Role;

/** Lines of a terminal, wrapped at its width; labels stand in a column of their own. */
final class ScreenLines {

  static final int LABEL = 11;
  private static final int NARROWEST = 40;

  private final int width;
  private final List<Line> lines = new ArrayList<>();

  ScreenLines(int width) {
    this.width = Math.max(NARROWEST, width);
  }

  /** Columns right of the labels. */
  int room() {
    return width - LABEL - 2;
  }

  void figure(String label, String value) {
    wrap(Role.PLAIN, label, value);
  }

  void gap() {
    add(new Line(Role.PLAIN, "", ""));
  }

  void add(Line line) {
    lines.add(line);
  }

  void wrap(Role role, String label, String text) {
    int room = label.isEmpty() ? width : room();
    StringBuilder line = new StringBuilder();
    String head = label;
    for (String word : text.split(" ")) {
      if (line.length() > 0 && line.length() + 1 + word.length() > room) {
        add(new Line(role, head, plainSpaces(line)));
        head = label.isEmpty() ? "" : " ";
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
    }
    add(new Line(role, head, plainSpaces(line)));
  }

  /** Terminals seldom have the narrow spaces that hold a number and its unit together. */
  static String plainSpaces(CharSequence text) {
    return text.toString().replaceAll("[\\u00a0\\u2009\\u202f]", " ");
  }

  List<Line> lines() {
    return List.copyOf(lines);
  }
}
