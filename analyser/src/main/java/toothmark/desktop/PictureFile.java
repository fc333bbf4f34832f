package toothmark.desktop;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import toothmark.chart.Figure;
import toothmark.report.FigureCsv;
import toothmark.report.FigureSvg;

/** A figure as a file. */
final class PictureFile {

  private static final int PIXELS = 2;
  private static final String HEADER = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

  private PictureFile() {}

  /** PNG or the points as CSV where the name ends so, else SVG. */
  static byte[] bytes(Figure figure, Path file) throws IOException {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".csv")) {
      return FigureCsv.of(figure);
    }
    return name.endsWith(".png")
        ? png(figure)
        : (HEADER + FigureSvg.of(figure, "figure")).getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] png(Figure figure) throws IOException {
    int w = Figure.WIDTH * PIXELS;
    int h = figure.height() * PIXELS;
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Look.ink().paper());
    g.fillRect(0, 0, w, h);
    g.scale(PIXELS, PIXELS);
    Paint.smooth(g);
    figure.chart().draw(g, new Rectangle2D.Double(0, 0, Figure.WIDTH, figure.height()));
    g.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }
}
