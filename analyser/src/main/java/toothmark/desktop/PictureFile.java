package toothmark.desktop;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
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

  /** The name with an ending, that of a drawing where it has none. */
  static Path named(Path file) {
    String name = file.getFileName().toString();
    return name.indexOf('.') < 0 ? file.resolveSibling(name + ".svg") : file;
  }

  /**
   * A drawing, an image or the points, as the name ends.
   *
   * @throws FileSystemException if it ends otherwise
   */
  static byte[] bytes(Figure figure, Path file) throws IOException {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return switch (name.substring(name.lastIndexOf('.') + 1)) {
      case "svg" -> (HEADER + FigureSvg.of(figure, "figure")).getBytes(StandardCharsets.UTF_8);
      case "png" -> png(figure);
      case "csv" -> FigureCsv.of(figure);
      default -> throw new FileSystemException(file.toString(), null, Phrases.of("picture.ending"));
    };
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
