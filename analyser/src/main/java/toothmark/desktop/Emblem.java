package toothmark.desktop;

import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import toothmark.chart.Ink;

/** The program's sign: a trigger wheel with its gap before the sensor. */
final class Emblem {

  private static final int TEETH = 12;
  private static final int[] SIZES = {16, 24, 32, 48, 64, 128, 256};

  private Emblem() {}

  /** The sign in the sizes that desktops ask for. */
  static List<Image> all() {
    List<Image> images = new ArrayList<>();
    for (int size : SIZES) {
      images.add(of(size));
    }
    return images;
  }

  /** The sign on a clear ground, so many pixels wide and high. */
  static BufferedImage of(int size) {
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
    Graphics2D g = image.createGraphics();
    Paint.smooth(g);
    g.scale(size / 2.0, size / 2.0);
    g.translate(1, 1.12);
    g.setColor(Ink.LIGHT.crank());
    g.fill(wheel());
    g.setColor(Ink.LIGHT.trouble());
    g.fill(new Rectangle2D.Double(-0.13, -1.12, 0.26, 0.42));
    g.dispose();
    return image;
  }

  /** In units of half the picture, about the hub; the gap is at the top. */
  private static Area wheel() {
    Area wheel = new Area(disc(0.64));
    for (int i = 1; i < TEETH; i++) {
      Area tooth = new Area(new Rectangle2D.Double(-0.11, -0.86, 0.22, 0.4));
      tooth.transform(AffineTransform.getRotateInstance(2 * Math.PI * i / TEETH));
      wheel.add(tooth);
    }
    wheel.subtract(new Area(disc(0.26)));
    return wheel;
  }

  private static Ellipse2D disc(double radius) {
    return new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
  }
}
