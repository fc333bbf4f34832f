package toothmark.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;

/**
 * The one typeface of report and window: Fira Sans with tabular figures, under the SIL Open Font
 * License 1.1, so that text has the same width on every machine.
 */
public final class Lettering {

  /** Family of the regular weight, as a style sheet names it. */
  public static final String REGULAR = "Fira Tabular";

  /** Family of the strong weight. */
  public static final String STRONG = "Fira Tabular SemiBold";

  private static final Font REGULAR_FONT = load(REGULAR);
  private static final Font STRONG_FONT = load(STRONG);

  private Lettering() {}

  /**
   * The regular weight.
   *
   * @param size height of the type
   * @return the font
   */
  public static Font regular(double size) {
    return REGULAR_FONT.deriveFont((float) size);
  }

  /**
   * The strong weight.
   *
   * @param size height of the type
   * @return the font
   */
  public static Font strong(double size) {
    return STRONG_FONT.deriveFont((float) size);
  }

  /**
   * A font that has the letters of a text.
   *
   * @param font the font that is wanted
   * @param text what it is to say
   * @return the font, or where it lacks a letter the machine's own in the same size
   */
  public static Font able(Font font, String text) {
    return font.canDisplayUpTo(text) < 0
        ? font
        : new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(font.getSize2D());
  }

  /**
   * A weight as a page embeds it.
   *
   * @param family {@link #REGULAR} or {@link #STRONG}
   * @return a WOFF 2 file
   */
  public static byte[] webFont(String family) {
    return file(family, ".woff2");
  }

  /**
   * A weight as a document embeds it.
   *
   * @param family {@link #REGULAR} or {@link #STRONG}
   * @return a TrueType file
   */
  public static byte[] trueType(String family) {
    return file(family, ".ttf");
  }

  private static byte[] file(String family, String ending) {
    String file = family.toLowerCase(Locale.ROOT).replace(' ', '-') + ending;
    try (InputStream in = open(file)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new IllegalStateException("the typeface " + file + " cannot be read", e);
    }
  }

  private static Font load(String family) {
    try {
      return Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(trueType(family)));
    } catch (IOException | FontFormatException e) {
      throw new IllegalStateException("the typeface " + family + " cannot be read", e);
    }
  }

  private static InputStream open(String file) {
    InputStream in = Lettering.class.getResourceAsStream(file);
    if (in == null) {
      throw new IllegalStateException("the typeface " + file + " is missing from the program");
    }
    return in;
  }
}
