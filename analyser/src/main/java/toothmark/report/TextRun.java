package toothmark.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import toothmark.chart.Lettering;

/**
 * Words of one look.
 *
 * @param text what they say
 * @param font in which font; another one that has the letters takes its place where need be
 * @param colour in which colour
 */
record TextRun(String text, Font font, Color colour) {

  private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);

  TextRun {
    font = Lettering.able(font, text);
  }

  TextRun saying(String other) {
    return new TextRun(other, font, colour);
  }

  boolean looksLike(TextRun other) {
    return font.equals(other.font) && colour.equals(other.colour);
  }

  /** In points. */
  double width() {
    return font.getStringBounds(text, CONTEXT).getWidth();
  }

  /** How many leading characters of a word fit into a width; at least one. */
  int fitting(String word, double width) {
    int count = word.length();
    while (count > 1 && saying(word.substring(0, count)).width() > width) {
      count--;
    }
    return count;
  }
}
