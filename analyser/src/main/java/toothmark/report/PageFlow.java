package toothmark.report;

import java.awt.Graphics2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import toothmark.chart.Ink;
import toothmark.chart.Lettering;

/** Places blocks one below the other on as many sheets as they need. */
final class PageFlow {

  /** Width of what is printed, in points: A4 (ISO 216) less its margins. */
  static final double WIDTH = 180 * PdfPages.POINTS_PER_MILLIMETRE;

  private static final double SHEET_WIDTH_MM = 210;
  private static final double SHEET_HEIGHT_MM = 297;
  private static final double LEFT = 15 * PdfPages.POINTS_PER_MILLIMETRE;
  private static final double TOP = 15 * PdfPages.POINTS_PER_MILLIMETRE;
  private static final double FOOT = 284 * PdfPages.POINTS_PER_MILLIMETRE;
  private static final double BOTTOM = FOOT - 20;

  /** Height of what a sheet holds, points. */
  static final double ROOM = BOTTOM - TOP;

  private final List<List<Placed>> sheets = new ArrayList<>(List.of(new ArrayList<>()));
  private final List<Block> together = new ArrayList<>();
  private double at = TOP;

  /** Something of a known height. */
  interface Block {
    /** In points. */
    double height();

    /** Draws it from its upper left corner. */
    void draw(Graphics2D g, double x, double y);
  }

  /** Whether a block may stand last on a sheet. */
  enum Keep {
    FREE,
    WITH_NEXT
  }

  private record Placed(Block block, double y) {}

  /** An empty height, left out at the head of a sheet. */
  record Space(double height) implements Block {
    @Override
    public void draw(Graphics2D g, double x, double y) {
      // stays white
    }
  }

  /** Adds a block; those that are kept with the next one go to its sheet. */
  void add(Block block, Keep keep) {
    together.add(block);
    if (keep == Keep.FREE) {
      place();
    }
  }

  /** Goes on at the head of a new sheet. */
  void breakSheet() {
    place();
    if (at > TOP) {
      sheets.add(new ArrayList<>());
      at = TOP;
    }
  }

  private void place() {
    makeRoom(together.stream().mapToDouble(Block::height).sum());
    for (Block b : together) {
      makeRoom(b.height()); // where they are too many for one sheet
      if (at > TOP || !(b instanceof Space)) {
        sheets.get(sheets.size() - 1).add(new Placed(b, at));
        at += b.height();
      }
    }
    together.clear();
  }

  private void makeRoom(double height) {
    if (at + height > BOTTOM && at > TOP) {
      sheets.add(new ArrayList<>());
      at = TOP;
    }
  }

  /** Draws every sheet, with a title and its number at the foot. */
  void print(PdfPages pages, String title) throws IOException {
    place();
    for (int i = 0; i < sheets.size(); i++) {
      List<Placed> sheet = sheets.get(i);
      String number = "Page " + (i + 1) + " of " + sheets.size();
      pages.add(
          SHEET_WIDTH_MM,
          SHEET_HEIGHT_MM,
          g -> {
            sheet.forEach(p -> p.block().draw(g, LEFT, p.y()));
            foot(g, title, number);
          });
    }
  }

  private static void foot(Graphics2D g, String title, String number) {
    TextRun look = new TextRun("", Lettering.regular(9), Ink.LIGHT.quiet());
    TextLine right = TextLine.broken(List.of(look.saying(number)), WIDTH).get(0);
    TextLine left = TextLine.broken(List.of(look.saying(title)), WIDTH - right.width() - 20).get(0);
    left.draw(g, LEFT, FOOT);
    right.draw(g, LEFT + WIDTH - right.width(), FOOT);
  }
}
