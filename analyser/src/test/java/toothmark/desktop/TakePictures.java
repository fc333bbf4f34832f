package toothmark.desktop;

import java.awt.Container;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFrame;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import toothmark.chart.Ink;
import toothmark.chart.TraceChart;
import toothmark.desktop.JobDraft.Field;
import toothmark.examination.JobSheetReader;

/**
 * Takes a picture of each view of the window, light and dark, on a small and a large screen, and of
 * each on the small one with type half as large again.
 *
 * <p>Arguments: the folder of the samples, the folder for the pictures, and, for some only, a part
 * of their names, such as {@code larger} or {@code dark-1366}.
 */
public final class TakePictures {

  private static final Dimension SMALL = new Dimension(1366, 768);
  private static final Dimension LARGE = new Dimension(2560, 1440);
  private static final int COLOURS = 256;

  /** Colours that differ only in the other bits look alike. */
  private static final int ALIKE = 0xF0F0F0;

  private final Path samples;
  private final Path pictures;
  private final String only;

  private TakePictures(Path samples, Path pictures, String only) {
    this.samples = samples;
    this.pictures = pictures;
    this.only = only;
  }

  /** Takes them all. */
  public static void main(String[] arguments) throws Exception {
    new TakePictures(
            Path.of(arguments[0]),
            Files.createDirectories(Path.of(arguments[1])),
            arguments.length > 2 ? arguments[2] : "")
        .all();
    System.exit(0);
  }

  private void all() throws Exception {
    ImageIO.write(Emblem.of(256), "png", pictures.resolve("emblem.png").toFile());
    for (Ink ink : Ink.values()) {
      String look = ink.name().toLowerCase(Locale.ROOT);
      views(ink, 1, SMALL, look + "-1366");
      views(ink, 1, LARGE, look + "-2560");
    }
    views(Ink.LIGHT, 1.5, SMALL, "larger-1366");
  }

  private void views(Ink ink, double enlarged, Dimension screen, String name) throws Exception {
    if (!name.contains(only)) {
      return;
    }
    SwingUtilities.invokeAndWait(
        () -> {
          Look.enlarge(enlarged);
          Look.wear(ink);
        });
    try (DrivenWindow window = DrivenWindow.show(screen)) {
      views(window, name);
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
    w.on(x -> x.model.job.edit(x.model.job.draft.get().with(Field.PATTERN, "36-x"), "pattern"));
    take(w, "job-" + name);
    w.run("undo");
    w.run("measures");
    for (String picture :
        List.of("wheel", "turns", "speed", "advance", "alignment", "dwell", "period", "orders")) {
      w.on(x -> x.pictures.show(picture));
      take(w, picture + "-" + name);
    }
    aids(w, name);
    losses(w, name);
    questions(w, name);
    w.open(samples.resolve("refitted-wheel/capture.csv.gz"));
    sideBySide(w, name);
    w.on(x -> x.model.bench.compare(Request.of(samples.resolve("leads-swapped/capture.csv.gz"))));
    w.settle();
    w.on(
        x -> {
          save(x.comparison().orElseThrow().frame.getRootPane(), "compare-" + name);
          x.comparison().orElseThrow().frame.dispose();
        });
  }

  /** Where sync was lost, and what another input circuit would have made of it. */
  private void losses(DrivenWindow w, String name) throws Exception {
    w.open(samples.resolve("loose-connector/capture.csv.gz"));
    w.on(x -> x.pictures.show("sync"));
    take(w, "sync-" + name);
    w.run("whatIf");
    w.run("trace");
    w.on(x -> x.model.whatIf.setting.set(new WhatIf.Setting(WhatIf.Circuit.ADAPTIVE, 75, 900)));
    take(w, "what-if-" + name);
  }

  /** What is asked and told where something is not as it should be. */
  private void questions(DrivenWindow w, String name) throws Exception {
    w.open(samples.resolve("README.md"));
    take(w, "wrong-file-" + name);
    Path folder = Files.createTempDirectory("pictures");
    Path capture =
        Files.copy(
            samples.resolve("refitted-wheel/capture.csv.gz"), folder.resolve("capture.csv.gz"));
    Path sheet =
        Files.writeString(
            folder.resolve(JobSheetReader.USUAL_NAME),
            "[job]\ntitle = \"Van, 2.0 litres\"\n\n[wheel]\npatern = \"36-1\"\n");
    w.open(capture);
    w.run("job");
    take(w, "mend-" + name);
    Files.delete(sheet);
    w.open(capture);
    w.on(x -> x.model.job.edit(x.model.job.draft.get().withRole(Field.TDC, "CH2")));
    take(w, "doubt-" + name);
    w.on(x -> x.commands.run("undo"));
    w.settle();
    Files.delete(capture);
    Files.delete(folder);
    JDialog keys = w.ask(x -> KeysWindow.show(x.frame, x.commands));
    w.settle();
    w.on(
        x -> {
          save(keys.getRootPane(), "keys-" + name);
          keys.dispose();
        });
  }

  /** Two captures on one screen, as their windows lie on it. */
  private void sideBySide(DrivenWindow w, String name) throws Exception {
    Dimension size = w.frame().getSize();
    try (DrivenWindow other = DrivenWindow.show(size)) {
      other.open(samples.resolve("loose-connector/capture.csv.gz"));
      other.run("nextEvent");
      w.run("trace");
      List<DrivenWindow> both = List.of(w, other);
      List<JFrame> frames = both.stream().map(DrivenWindow::frame).toList();
      w.on(x -> Desk.tile(frames, new Rectangle(size)));
      BufferedImage screen = new BufferedImage(size.width, size.height, BufferedImage.TYPE_INT_RGB);
      for (DrivenWindow one : both) {
        one.settle();
        one.on(
            x ->
                x.frame
                    .getRootPane()
                    .paint(
                        screen
                            .createGraphics()
                            .create(x.frame.getX(), 0, x.frame.getWidth(), size.height)));
      }
      save(screen, "side-by-side-" + name);
    }
    w.on(x -> x.frame.setSize(size));
    w.settle();
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
            if (name.endsWith("2560")) {
              x.aids().dialog.setSize(LARGE);
            }
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

  private void save(JComponent all, String name) {
    BufferedImage image =
        new BufferedImage(all.getWidth(), all.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    all.paint(g);
    g.dispose();
    save(image, name);
  }

  private void save(BufferedImage image, String name) {
    try {
      ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
      ImageWriteParam small = writer.getDefaultWriteParam();
      small.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      small.setCompressionQuality(0);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
        writer.setOutput(out);
        writer.write(null, new IIOImage(indexed(image), null, null), small);
      }
      Files.write(pictures.resolve("desk-" + name + ".png"), bytes.toByteArray());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The same in 256 colours: a third as large on disk. */
  private static BufferedImage indexed(BufferedImage image) {
    int[] pixels =
        image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    int[] palette = palette(pixels);
    BufferedImage out =
        new BufferedImage(
            image.getWidth(),
            image.getHeight(),
            BufferedImage.TYPE_BYTE_INDEXED,
            new IndexColorModel(8, palette.length, palette, 0, false, -1, DataBuffer.TYPE_BYTE));
    Map<Integer, Integer> nearest = new HashMap<>();
    int[] indices =
        Arrays.stream(pixels)
            .map(p -> nearest.computeIfAbsent(p, c -> nearest(palette, c)))
            .toArray();
    out.getRaster().setPixels(0, 0, image.getWidth(), image.getHeight(), indices);
    return out;
  }

  /** Half of it what there is most of, half what the rest looks like. */
  private static int[] palette(int[] pixels) {
    List<Integer> byCount =
        Arrays.stream(pixels)
            .boxed()
            .collect(Collectors.groupingBy(p -> p, Collectors.counting()))
            .entrySet()
            .stream()
            .sorted(Map.Entry.<Integer, Long>comparingByValue().reversed())
            .map(Map.Entry::getKey)
            .toList();
    Map<Integer, Integer> firstOfKind = new LinkedHashMap<>();
    byCount.forEach(p -> firstOfKind.putIfAbsent(p & ALIKE, p));
    return Stream.concat(byCount.stream().limit(COLOURS / 2), firstOfKind.values().stream())
        .distinct()
        .limit(COLOURS)
        .mapToInt(p -> p)
        .toArray();
  }

  private static int nearest(int[] palette, int colour) {
    return IntStream.range(0, palette.length)
        .boxed()
        .min(Comparator.comparingInt(i -> distance(palette[i], colour)))
        .orElseThrow();
  }

  private static int distance(int a, int b) {
    int red = (a >> 16 & 0xFF) - (b >> 16 & 0xFF);
    int green = (a >> 8 & 0xFF) - (b >> 8 & 0xFF);
    int blue = (a & 0xFF) - (b & 0xFF);
    return red * red + green * green + blue * blue;
  }
}
