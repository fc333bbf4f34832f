package toothmark.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import toothmark.chart.Lettering;
import toothmark.timing.DegreeTape;
import toothmark.units.Say;

/**
 * Degree tapes on sheets of paper at true scale, each with a ruler that shows whether the printer
 * kept it. A tape longer than a sheet is cut into strips that meet at a degree mark.
 */
public final class TapeSheets {

  private static final double MARGIN = 15;
  private static final double TITLE_BASELINE = 20;
  private static final double FIRST_STRIP = 38;
  private static final double STRIP_HEIGHT = 16;
  private static final double STRIP_STEP = 30;
  private static final double RULER_LENGTH = 100;
  private static final double RULER_FROM_FOOT = 24;
  private static final double TAB = 6;

  private final DegreeTape tape;
  private final Paper paper;
  private final List<DegreeTape> strips;

  private TapeSheets(DegreeTape tape, Paper paper) {
    this.tape = tape;
    this.paper = paper;
    int degrees =
        (int) Math.floor((paper.width - 2 * MARGIN - 2 * TAB) / tape.millimetresPerDegree());
    if (degrees < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "one degree of a pulley of %.1f mm is longer than the paper",
              tape.diameterMillimetres()));
    }
    this.strips = new ArrayList<>();
    for (int d = tape.fromDegrees(); d < tape.toDegrees(); d += degrees) {
      strips.add(
          new DegreeTape(tape.diameterMillimetres(), d, Math.min(tape.toDegrees(), d + degrees)));
    }
  }

  /** Sizes of paper, lying on the long side. */
  public enum Paper {
    /** ISO 216. */
    A4(297, 210),
    /** ANSI/ASME Y14.1, 11 by 8.5 inches. */
    LETTER(279.4, 215.9);

    private final double width;
    private final double height;

    Paper(double widthMillimetres, double heightMillimetres) {
      this.width = widthMillimetres;
      this.height = heightMillimetres;
    }
  }

  /**
   * Lays a tape out.
   *
   * @param tape what is drawn
   * @param paper what it is printed on
   * @return the sheets
   * @throws IllegalArgumentException if a degree is longer than the paper
   */
  public static TapeSheets of(DegreeTape tape, Paper paper) {
    return new TapeSheets(tape, paper);
  }

  /**
   * How many sheets it takes.
   *
   * @return 1 or more
   */
  public int sheets() {
    return (strips.size() + stripsASheet() - 1) / stripsASheet();
  }

  /**
   * Size of a sheet.
   *
   * @return from 0, mm
   */
  public Rectangle2D sheetMillimetres() {
    return new Rectangle2D.Double(0, 0, paper.width, paper.height);
  }

  /**
   * One sheet as a document of its own.
   *
   * @param sheet from 0
   * @return SVG 1.1, its size in millimetres
   */
  public String svg(int sheet) {
    double unit = 100; // so that 0.1 of a unit, as is written, is a micrometre
    SvgGraphics pen = new SvgGraphics("tape");
    draw(pen, unit, sheet);
    return String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1$.1fmm\" height=\"%2$.1fmm\""
                + " viewBox=\"0 0 %3$.0f %4$.0f\">\n",
            paper.width,
            paper.height,
            unit * paper.width,
            unit * paper.height)
        + pen.markup()
        + "</svg>\n";
  }

  /**
   * All sheets.
   *
   * @return a PDF document, a page each sheet
   * @throws IOException if it cannot be made
   */
  public byte[] pdf() throws IOException {
    try (PdfPages pages = new PdfPages(Wording.of("tape.title"))) {
      for (int i = 0; i < sheets(); i++) {
        int sheet = i;
        pages.add(
            paper.width, paper.height, pen -> draw(pen, PdfPages.POINTS_PER_MILLIMETRE, sheet));
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      pages.write(out);
      return out.toByteArray();
    }
  }

  private int stripsASheet() {
    return (int) ((paper.height - FIRST_STRIP - RULER_FROM_FOOT - STRIP_HEIGHT) / STRIP_STEP) + 1;
  }

  /**
   * Draws a sheet, as it is printed.
   *
   * @param graphics where
   * @param unit of it for a millimetre
   * @param sheet from 0
   */
  public void draw(Graphics2D graphics, double unit, int sheet) {
    Pen pen = new Pen(graphics, unit);
    pen.bold(
        MARGIN,
        TITLE_BASELINE,
        4.5,
        Wording.of(
            "tape.heading", Say.number(tape.diameterMillimetres(), 1), (sheet + 1), sheets()));
    pen.text(
        MARGIN,
        TITLE_BASELINE + 6,
        3.2,
        Wording.of("tape.numbers", Say.number(tape.millimetresPerDegree(), 4)));
    int first = sheet * stripsASheet();
    int last = Math.min(strips.size(), first + stripsASheet());
    for (int i = first; i < last; i++) {
      strip(pen, i, FIRST_STRIP + (i - first) * STRIP_STEP);
    }
    ruler(pen, paper.height - RULER_FROM_FOOT);
  }

  private void strip(Pen pen, int index, double top) {
    DegreeTape strip = strips.get(index);
    double left = MARGIN + TAB;
    double right = left + strip.lengthMillimetres();
    double foot = top + STRIP_HEIGHT;
    pen.box(left - TAB, top, right - left + 2 * TAB, STRIP_HEIGHT);
    for (DegreeTape.Mark mark : strip.marks()) {
      double x = left + mark.millimetres();
      double length =
          switch (mark.length()) {
            case LONG -> 8;
            case MIDDLE -> 6;
            case SHORT -> 4;
          };
      pen.line(x, foot, x, foot - length, mark.degrees() == 0 ? 0.5 : 0.15);
      if (mark.length() == DegreeTape.Length.LONG) {
        pen.centred(
            x,
            foot - 9.2,
            3.6,
            mark.degrees() == 0 ? Wording.of("tape.tdc") : plain(mark.degrees()));
      }
    }
    pen.arrow(left - TAB + 1, top + 2, TAB - 2);
    if (index > 0) {
      pen.text(left - TAB, foot + 4, 2.8, Wording.of("tape.lay", plain(strip.fromDegrees())));
    }
  }

  private static String plain(int degrees) {
    return Say.number(degrees, 0);
  }

  private static void ruler(Pen pen, double y) {
    pen.line(MARGIN, y, MARGIN + RULER_LENGTH, y, 0.2);
    for (int mm = 0; mm <= RULER_LENGTH; mm += 5) {
      pen.line(MARGIN + mm, y, MARGIN + mm, y - (mm % 10 == 0 ? 3 : 2), 0.15);
    }
    pen.text(MARGIN + RULER_LENGTH + 4, y, 3.2, Wording.of("tape.ruler"));
    pen.text(MARGIN, y + 6, 3.2, Wording.of("tape.caution"));
  }

  /** Draws in millimetres. */
  private record Pen(Graphics2D to, double unit) {

    Pen {
      to.setColor(Color.BLACK);
    }

    void line(double x1, double y1, double x2, double y2, double width) {
      stroke(width);
      to.draw(new Line2D.Double(x1 * unit, y1 * unit, x2 * unit, y2 * unit));
    }

    void box(double x, double y, double width, double height) {
      stroke(0.1);
      to.draw(new Rectangle2D.Double(x * unit, y * unit, width * unit, height * unit));
    }

    void arrow(double x, double y, double length) {
      line(x, y, x + length, y, 0.3);
      Path2D head = new Path2D.Double();
      head.moveTo((x + length) * unit, y * unit);
      head.lineTo((x + length - 1.5) * unit, (y - 0.8) * unit);
      head.lineTo((x + length - 1.5) * unit, (y + 0.8) * unit);
      head.closePath();
      to.fill(head);
    }

    void text(double x, double y, double size, String text) {
      to.setFont(Lettering.regular(size * unit));
      to.drawString(text, (float) (x * unit), (float) (y * unit));
    }

    void bold(double x, double y, double size, String text) {
      to.setFont(Lettering.strong(size * unit));
      to.drawString(text, (float) (x * unit), (float) (y * unit));
    }

    void centred(double x, double y, double size, String text) {
      to.setFont(Lettering.regular(size * unit));
      double width = to.getFontMetrics().stringWidth(text) / unit;
      to.drawString(text, (float) ((x - width / 2) * unit), (float) (y * unit));
    }

    private void stroke(double width) {
      to.setStroke(new BasicStroke((float) (width * unit)));
    }
  }
}
