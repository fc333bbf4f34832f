package toothmark.report;

import java.awt.Graphics2D;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.stream.Collectors;

/** One line of a paragraph: runs side by side. */
final class TextLine {

  private static final double LEADING = 1.4;
  private static final double BASELINE = 1.05;

  private final List<TextRun> runs = new ArrayList<>();
  private double width;

  private TextLine() {}

  /** Breaks runs into lines at spaces, and within words that are wider than a line. */
  static List<TextLine> broken(List<TextRun> runs, double width) {
    List<TextLine> lines = new ArrayList<>(List.of(new TextLine()));
    for (TextRun run : runs) {
      Deque<String> words = new ArrayDeque<>(List.of(run.text().split("(?<= )")));
      while (!words.isEmpty()) {
        String word = words.pop();
        TextLine line = lines.get(lines.size() - 1);
        if (line.takes(run.saying(word.stripTrailing()), width)) {
          line.add(run.saying(word));
        } else {
          String fits = line.runs.isEmpty() ? word.substring(0, run.fitting(word, width)) : "";
          line.add(run.saying(fits));
          words.push(word.substring(fits.length()));
          lines.add(new TextLine());
        }
      }
    }
    return lines;
  }

  /** A full stop or comma after a link hangs over rather than to start the next line. */
  private boolean takes(TextRun word, double room) {
    boolean hangs =
        word.text().length() == 1
            && !runs.isEmpty()
            && !runs.get(runs.size() - 1).text().endsWith(" ");
    return hangs || width + word.width() <= room;
  }

  private void add(TextRun run) {
    if (runs.isEmpty() && run.text().isBlank()) {
      return;
    }
    TextRun last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
    if (last != null && last.looksLike(run)) {
      runs.set(runs.size() - 1, run.saying(last.text() + run.text()));
    } else {
      runs.add(run);
    }
    width += run.width();
  }

  double width() {
    return width;
  }

  double height() {
    return LEADING * runs.stream().mapToDouble(r -> r.font().getSize2D()).max().orElse(0);
  }

  /** Draws from the upper left corner of the line. */
  void draw(Graphics2D g, double x, double y) {
    double at = x;
    for (TextRun r : runs) {
      g.setFont(r.font());
      g.setPaint(r.colour());
      g.drawString(r.text(), (float) at, (float) (y + height() / LEADING * BASELINE));
      at += r.width();
    }
  }

  @Override
  public String toString() {
    return runs.stream().map(TextRun::text).collect(Collectors.joining());
  }
}
