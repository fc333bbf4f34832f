package toothmark.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Stroke;

/**
 * Colours by role, for light and for dark ground.
 *
 * <p>The hues are those of Okabe and Ito, Color Universal Design (2008), which colour-blind readers
 * tell apart; shape and place say the same as colour everywhere.
 */
public enum Ink {
  /** For paper and a light window. */
  LIGHT(0xFFFFFF, 0x1B1F24, 0xE3E6EA, 0x59636E),
  /** For a dark window. */
  DARK(0x16191D, 0xECEFF2, 0x343A41, 0xA3ADB8);

  private static final Color BLUE = new Color(0x0072B2);
  private static final Color ORANGE = new Color(0xE69F00);
  private static final Color PURPLE = new Color(0xCC79A7);
  private static final Color YELLOW = new Color(0xF0E442);
  private static final Color GREEN = new Color(0x009E73);
  private static final Color LIGHT_GREEN = new Color(0x3DCBA0);
  private static final Color SKY = new Color(0x56B4E9);
  private static final Color VERMILION = new Color(0xD55E00);

  private final Color paper;
  private final Color text;
  private final Color grid;
  private final Color quiet;

  Ink(int paper, int text, int grid, int quiet) {
    this.paper = new Color(paper);
    this.text = new Color(text);
    this.grid = new Color(grid);
    this.quiet = new Color(quiet);
  }

  /**
   * The ground.
   *
   * @return white or nearly black
   */
  public Color paper() {
    return paper;
  }

  /**
   * Text, and what was actually done.
   *
   * @return nearly black or nearly white
   */
  public Color text() {
    return text;
  }

  /**
   * Rules that guide the eye.
   *
   * @return light or dark grey
   */
  public Color grid() {
    return grid;
  }

  /**
   * Axes and remarks.
   *
   * @return grey
   */
  public Color quiet() {
    return quiet;
  }

  /**
   * The crank signal.
   *
   * @return blue
   */
  public Color crank() {
    return this == LIGHT ? BLUE : SKY;
  }

  /**
   * A coil.
   *
   * @param index from 0, in the order of the job sheet; the colours repeat after the fourth
   * @return orange, reddish purple, yellow or grey
   */
  public Color coil(int index) {
    return switch (Math.floorMod(index, 4)) {
      case 0 -> ORANGE;
      case 1 -> PURPLE;
      case 2 -> YELLOW;
      default -> quiet;
    };
  }

  /**
   * Top dead centre.
   *
   * @return bluish green, lighter on dark ground
   */
  public Color tdc() {
    return this == LIGHT ? GREEN : LIGHT_GREEN;
  }

  /**
   * What was commanded.
   *
   * @return sky blue, to be drawn dashed
   */
  public Color commanded() {
    return SKY;
  }

  /**
   * What is wrong.
   *
   * @return vermilion
   */
  public Color trouble() {
    return VERMILION;
  }

  /** A colour thinned towards the ground, for bands; opaque, so that printers need no blending. */
  Color thin(Color colour, double share) {
    return new Color(
        mix(paper.getRed(), colour.getRed(), share),
        mix(paper.getGreen(), colour.getGreen(), share),
        mix(paper.getBlue(), colour.getBlue(), share));
  }

  private static int mix(int ground, int colour, double share) {
    return (int) Math.round(ground + share * (colour - ground));
  }

  static Stroke line(double width) {
    return new BasicStroke((float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
  }

  static Stroke dotted(double width) {
    return new BasicStroke(
        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10f, new float[] {2f, 2f}, 0f);
  }

  static Stroke dashed(double width) {
    return new BasicStroke(
        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10f, new float[] {6f, 4f}, 0f);
  }
}
