package toothmark.desktop;

import java.awt.Container;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.swing.JComponent;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import toothmark.chart.Ink;
import toothmark.chart.TraceChart;

/**
 * Takes a picture of each view of the window, light and dark, on a small and a large screen.
 *
 * <p>Arguments: the folder of the samples, the folder for the pictures.
 */
public final class TakePictures {

  private static final List<Dimension> SCREENS =
      List.of(new Dimension(1366, 768), new Dimension(2560, 1440));

  private final Path samples;
  private final Path pictures;

  private TakePictures(Path samples, Path pictures) {
    this.samples = samples;
    this.pictures = pictures;
  }

  /** Takes them all. */
  public static void main(String[] arguments) throws Exception {
    new TakePictures(Path.of(arguments[0]), Files.createDirectories(Path.of(arguments[1]))).all();
    System.exit(0);
  }

  private void all() throws Exception {
    for (Ink ink : Ink.values()) {
      for (Dimension screen : SCREENS) {
        SwingUtilities.invokeAndWait(() -> Look.wear(ink));
        String name = ink.name().toLowerCase(Locale.ROOT) + "-" + screen.width;
        try (DrivenWindow window = DrivenWindow.show(screen)) {
          views(window, name);
        }
      }
    }
  }

  private void views(DrivenWindow w, String name) throws Exception {
    take(w, "empty-" + name);
    w.openSample();
    w.settle();
    take(w, "start-" + name);
    w.run("nextEvent");
    w.run("cursorFirst");
    w.on(
        x ->
            x.model.cursors.set(
                x.model
                    .cursors
                    .get()
                    .withSecond(x.model.view.get().orElseThrow().shown().endExclusive() - 2e-3)));
    take(w, "event-" + name);
    w.on(x -> x.notice.putAway());
    w.open(samples.resolve("refitted-wheel/capture.csv.gz"));
    take(w, "timing-" + name);
    w.on(x -> x.model.along.set(TraceChart.Along.ANGLE));
    w.on(x -> x.model.select(x.model.examination().orElseThrow().diagnosis().findings().get(0)));
    w.on(x -> x.model.zoom(0.05));
    w.run("job");
    w.on(
        x ->
            x.model.job.edit(
                x.model.job.draft.get().with(JobDraft.Field.PATTERN, "36-x"), "pattern"));
    take(w, "job-" + name);
    w.run("undo");
    w.run("whatIf");
    take(w, "what-if-" + name);
    w.run("measures");
    for (String picture :
        List.of(
            "wheel",
            "turns",
            "speed",
            "advance",
            "alignment",
            "dwell",
            "sync",
            "period",
            "orders")) {
      w.on(x -> x.pictures.show(picture));
      take(w, picture + "-" + name);
    }
    aids(w, name);
    w.open(samples.resolve("README.md"));
    take(w, "wrong-file-" + name);
    w.open(samples.resolve("refitted-wheel/capture.csv.gz"));
    w.on(x -> x.model.bench.compare(Request.of(samples.resolve("leads-swapped/capture.csv.gz"))));
    w.settle();
    w.on(
        x -> {
          save(x.comparison().orElseThrow().frame.getRootPane(), "compare-" + name);
          x.comparison().orElseThrow().frame.dispose();
        });
  }

  /** The sums at the bench, with readings of a day's work in them. */
  private void aids(DrivenWindow w, String name) {
    String[][][] readings = {
      {{"21", "15"}, {"21.5", "15"}, {"20.5", "15.5"}},
      {},
      {{"900", "10", "6.5"}, {"2000", "16", "11"}, {"3500", "26", "20"}, {"4500", "28", "21.5"}},
      {}
    };
    String[] aids = {"piston", "tape", "strobe", "firing"};
    for (int i = 0; i < aids.length; i++) {
      String aid = aids[i];
      String[][] rows = readings[i];
      w.on(
          x -> {
            x.aids().show(aid);
            Container view =
                (Container) DrivenWindow.named(x.aids().dialog.getContentPane(), "aid." + aid);
            type(view, rows);
          });
      w.settle();
      w.on(x -> save(x.aids().dialog.getRootPane(), "bench-" + aid + "-" + name));
    }
    w.on(x -> x.aids().dialog.setVisible(false));
  }

  private static void type(Container view, String[][] rows) {
    if (view.getName().equals("aid.tape")) {
      ((JTextField) DrivenWindow.named(view, "aid.diameter")).setText("150");
    }
    for (int r = 0; r < rows.length; r++) {
      for (int c = 0; c < rows[r].length; c++) {
        ((JTable) DrivenWindow.named(view, "aid.readings")).setValueAt(rows[r][c], r, c);
      }
    }
  }

  private void take(DrivenWindow w, String name) {
    w.settle();
    w.on(x -> save(x.frame.getRootPane(), name));
  }

  /** On the large screen the views that change most with the room they have. */
  private static boolean isKept(String name) {
    return !name.endsWith("2560") || name.matches("(event|advance)-.*");
  }

  private void save(JComponent all, String name) {
    if (!isKept(name)) {
      return;
    }
    BufferedImage image =
        new BufferedImage(all.getWidth(), all.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    all.paint(g);
    g.dispose();
    try {
      ImageIO.write(image, "png", pictures.resolve("desk-" + name + ".png").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
