package toothmark.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import org.w3c.dom.Element;
import toothmark.chart.Ink;
import toothmark.chart.Lettering;

/** How the parts of a page look on paper; sizes and distances in points. */
enum PrintStyle {
  TITLE(Lettering.strong(18), 8),
  SECTION(Lettering.strong(14), 24),
  HEADING(Lettering.strong(12), 8),
  VERDICT(Lettering.regular(16), 10),
  BODY(Lettering.regular(10.5), 5),
  STEP(Lettering.regular(10.5), 6),
  CAUTION(Lettering.regular(10.5), 6),
  ITEM(Lettering.regular(10.5), 3),
  MASTHEAD(Lettering.regular(10), 0),
  SMALL(Lettering.regular(10), 5),
  TABLE(Lettering.regular(10), 0),
  SIGNATURE(Lettering.regular(10), 40),
  FAULT(Lettering.strong(10), 18),
  WATCH(Lettering.strong(10), 18),
  NOTE(Lettering.strong(10), 18);

  private static final double INDENT = 12;
  private static final Color ORANGE = Ink.LIGHT.coil(0);

  private final Font font;
  private final double above;

  PrintStyle(Font font, double above) {
    this.font = font;
    this.above = above;
  }

  /** A shape beside a line, from the line's upper left corner. */
  record Mark(Shape shape, Color colour) {}

  /** Whether an element says a severity as a word, to which the style adds the shape. */
  static boolean isBadge(Element e) {
    return e.getAttribute("class").startsWith("badge ");
  }

  static PrintStyle of(Element e) {
    return switch (e.getTagName()) {
      case "h1" -> TITLE;
      case "h2" -> SECTION;
      case "h3" -> HEADING;
      case "li" -> ITEM;
      case "td", "th" -> TABLE;
      default -> ofClass(e.getAttribute("class"));
    };
  }

  private static PrintStyle ofClass(String name) {
    return switch (name) {
      case "verdict" -> VERDICT;
      case "next", "do" -> STEP;
      case "caution" -> CAUTION;
      case "badge fault" -> FAULT;
      case "badge watch" -> WATCH;
      case "badge note" -> NOTE;
      case "signature" -> SIGNATURE;
      case "masthead" -> MASTHEAD;
      case "captured", "small quiet" -> SMALL;
      default -> BODY;
    };
  }

  Font font() {
    return font;
  }

  /** The white above a paragraph. */
  double above() {
    return above;
  }

  /** How far lines stand in from the margin, beside their mark. */
  double indent() {
    return switch (this) {
      case STEP, CAUTION, ITEM, FAULT, WATCH, NOTE -> INDENT;
      default -> 0;
    };
  }

  /** Whether the next paragraph belongs to this one. */
  PageFlow.Keep keep() {
    return switch (this) {
      case TITLE, SECTION, HEADING, FAULT, WATCH, NOTE -> PageFlow.Keep.WITH_NEXT;
      default -> PageFlow.Keep.FREE;
    };
  }

  /** What stands beside a line of this height; most of it beside the first line only. */
  Optional<Mark> mark(double height, boolean first) {
    return switch (this) {
      case STEP ->
          Optional.of(new Mark(new Rectangle2D.Double(0, 0, 3, height), Ink.LIGHT.crank()));
      case CAUTION -> Optional.of(new Mark(new Rectangle2D.Double(0, 0, 3, height), ORANGE));
      default -> first ? atHead() : Optional.empty();
    };
  }

  private Optional<Mark> atHead() {
    Color ink = Ink.LIGHT.text();
    return switch (this) {
      case MASTHEAD ->
          Optional.of(
              new Mark(new Rectangle2D.Double(0, 17, PageFlow.WIDTH, 2), Ink.LIGHT.crank()));
      case SECTION -> Optional.of(new Mark(new Rectangle2D.Double(0, -5, PageFlow.WIDTH, 1), ink));
      case SIGNATURE -> Optional.of(new Mark(new Rectangle2D.Double(0, -2, 280, 0.5), ink));
      case ITEM -> Optional.of(new Mark(new Ellipse2D.Double(3, 5.5, 3, 3), ink));
      case FAULT ->
          Optional.of(new Mark(new Rectangle2D.Double(0, 2.5, 8, 8), Ink.LIGHT.trouble()));
      case WATCH -> Optional.of(new Mark(triangle(), ORANGE));
      case NOTE -> Optional.of(new Mark(new Ellipse2D.Double(0, 2.5, 8, 8), Ink.LIGHT.commanded()));
      default -> Optional.empty();
    };
  }

  private static Shape triangle() {
    Path2D path = new Path2D.Double();
    path.moveTo(4, 2);
    path.lineTo(8.5, 10.5);
    path.lineTo(-0.5, 10.5);
    path.closePath();
    return path;
  }
}
