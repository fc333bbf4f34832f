package toothmark.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;

/**
 * Builds a page; everything that is given as text or as an attribute's value is escaped.
 *
 * <p>The result is well-formed XML too. Characters that neither HTML nor XML allows become U+FFFD.
 */
final class HtmlWriter {

  /** After these a line break would show as a space. */
  private static final Set<String> INLINE = Set.of("a", "span");

  private final StringBuilder out = new StringBuilder(1 << 16);
  private final Deque<String> openTags = new ArrayDeque<>();

  /** Opens an element; attributes are given as names and values in turn. */
  HtmlWriter open(String tag, String... attributes) {
    start(tag, attributes);
    out.append('>');
    openTags.push(tag);
    return this;
  }

  /** Closes the element opened last. */
  HtmlWriter close() {
    String tag = openTags.pop();
    out.append("</").append(tag).append(INLINE.contains(tag) ? ">" : ">\n");
    return this;
  }

  /** An element with nothing but text in it. */
  HtmlWriter element(String tag, String text, String... attributes) {
    return open(tag, attributes).text(text).close();
  }

  /** An element that has no content. */
  HtmlWriter empty(String tag, String... attributes) {
    start(tag, attributes);
    out.append("/>\n");
    return this;
  }

  /** Text. */
  HtmlWriter text(String text) {
    escape(text, out);
    return this;
  }

  /** Text as it may stand in an element or an attribute. */
  static String escaped(String text) {
    StringBuilder escaped = new StringBuilder(text.length() + 16);
    escape(text, escaped);
    return escaped.toString();
  }

  /** Markup of our own making, taken as it is. */
  HtmlWriter markup(String markup) {
    out.append(markup);
    return this;
  }

  /**
   * The page.
   *
   * @throws IllegalStateException if an element is still open
   */
  @Override
  public String toString() {
    if (!openTags.isEmpty()) {
      throw new IllegalStateException("still open: " + openTags);
    }
    return out.toString();
  }

  private void start(String tag, String... attributes) {
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      text(attributes[i + 1]);
      out.append('"');
    }
  }

  private static void escape(String text, StringBuilder out) {
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      escape(text.codePointAt(i), out);
    }
  }

  private static void escape(int c, StringBuilder out) {
    switch (c) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append("&quot;");
      case '\'' -> out.append("&#39;");
      case 0x2009 -> out.append('\u202f'); // a number and its unit stay on one line
      default -> out.appendCodePoint(allowed(c) ? c : 0xFFFD);
    }
  }

  /** After XML 1.0, production 2, less the C1 controls that HTML forbids. */
  private static boolean allowed(int c) {
    return c == '\t'
        || c == '\n'
        || c >= 0x20 && c < 0x7F
        || c >= 0xA0 && c < 0xD800
        || c >= 0xE000 && c < 0xFFFE
        || c >= 0x10000;
  }
}
