package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;
import static toothmark.desktop.DrivenWindow.words;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.event.MouseEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.JRootPane;
import javax.swing.MenuSelectionManager;
import javax.swing.SwingUtilities;
import javax.swing.TransferHandler;
import org.junit.jupiter.api.Test;
import toothmark.desktop.JobDraft.Field;

/** What the real window takes and leaves as files; skipped where there is no display. */
class DeskFilesTest extends OpenedSheet {

  @Test
  void theCaptureIsReplacedByNothing() throws Exception {
    Path capture = folder.resolve("capture.csv.gz");
    byte[] before = Files.readAllBytes(capture);
    window.begin(w -> w.files.writeJob(capture));
    window.answer("Replace");
    assertThat(capture).hasBinaryContent(before);
    assertThat(notice())
        .isEqualTo(
            "capture.csv.gz could not be written.\n"
                + capture
                + ": This is the capture that is open; choose another name.");
  }

  @Test
  void whatCouldNotBeWrittenIsComplainedOfAsThatWithWhatIsInTheWay() {
    String way = sheet + ": a file stands where a folder is needed; choose another place";
    window.on(w -> w.files.writeReport(sheet));
    window.settle();
    assertThat(notice()).isEqualTo(sheet + " could not be written.\n" + way);
    window.on(w -> w.files.writeJob(sheet.resolve("other.toml")));
    assertThat(notice()).isEqualTo("other.toml could not be written.\n" + way);
    assertThat(sheet).hasContent(SHEET);
  }

  @Test
  void aFolderIsNoCapture() {
    drop(folder);
    assertThat(notice())
        .isEqualTo(
            folder.getFileName()
                + " could not be opened.\n"
                + folder
                + ": this is a folder; open or drop the capture that lies in it");
  }

  @Test
  void openingTheSampleMayBeCalledOff() {
    note("hums");
    window.begin(w -> w.commands.run("sample"));
    window.answer("Stay here");
    assertThat(notice()).isEmpty();
    assertThat(shown().capture()).isEqualTo(folder.resolve("capture.csv.gz"));
  }

  @Test
  void aFigureIsSavedByTheRightButtonInEachFormat() throws Exception {
    window.on(w -> w.pictures.show("speed"));
    window.settle();
    Path svg = save("speed", "Save as SVG…", "speed.svg");
    assertThat(Files.readString(svg)).startsWith("<?xml").contains("rev/min").endsWith("</svg>\n");
    Path png = save("speed", "Save as PNG…", "speed.png");
    assertThat(ImageIO.read(png.toFile()).getWidth()).isEqualTo(1520);
    Path csv = save("speed", "Save its points as CSV…", "speed.csv");
    // 20 s of a four-stroke at idle: a speed for each tooth that was seen at least
    assertThat(Files.readAllLines(csv)).hasSizeGreaterThan(100);
    byte[] before = Files.readAllBytes(csv);
    press("speed", "Save its points as CSV…");
    window.choose(csv);
    window.answer("Keep it");
    assertThat(csv).hasBinaryContent(before);
  }

  @Test
  void aFigureUnderANameOfAnotherFormatIsRefusedAndUnderOneWithoutEndingIsADrawing()
      throws Exception {
    window.on(w -> w.pictures.show("speed"));
    window.settle();
    Path photo = folder.resolve("p1.jpg");
    press("speed", "Save as SVG…");
    window.choose(photo);
    assertThat(photo).doesNotExist();
    assertThat(notice())
        .isEqualTo(
            "p1.jpg could not be written.\n"
                + photo
                + ": no ending of a picture; write a name that ends in .svg, .png or .csv");
    press("speed", "Save as PNG…");
    window.choose(folder.resolve("p1"));
    assertThat(folder.resolve("p1")).doesNotExist();
    assertThat(Files.readString(folder.resolve("p1.svg"))).endsWith("</svg>\n");
  }

  private Path save(String figure, String item, String name) {
    press(figure, item);
    assertThat(
            window.<String>ask(
                w -> DrivenWindow.chooser().orElseThrow().getSelectedFile().getName()))
        .isEqualTo(name);
    window.choose(folder.resolve(name));
    return folder.resolve(name);
  }

  /** Presses the right button on a figure and then an item of what it offers. */
  private void press(String figure, String item) {
    window.on(
        w -> {
          Component canvas = named(all(w), "canvas." + figure);
          canvas.dispatchEvent(
              new MouseEvent(
                  canvas, MouseEvent.MOUSE_PRESSED, 1, 0, 90, 60, 1, true, MouseEvent.BUTTON3));
        });
    window.begin(
        w -> {
          JPopupMenu menu = (JPopupMenu) MenuSelectionManager.defaultManager().getSelectedPath()[0];
          MenuSelectionManager.defaultManager().clearSelectedPath();
          Arrays.stream(menu.getComponents())
              .map(JMenuItem.class::cast)
              .filter(i -> i.getText().equals(item))
              .findFirst()
              .orElseThrow()
              .doClick();
        });
  }

  @Test
  void anEarlierCaptureIsChosenAndComparedAndWhatIsOpenStays() {
    window.begin(w -> w.commands.run("compare"));
    window.choose(SAMPLES.resolve("loose-connector/capture.csv.gz"));
    assertThat(window.<String>ask(w -> w.comparison().orElseThrow().verdict()))
        .startsWith("The captures show different wheels, 60-2 and 36-1. One fault gone");
    assertThat(window.<Path>ask(w -> w.model.bench.session.get().orElseThrow().request().capture()))
        .isEqualTo(folder.resolve("capture.csv.gz"));
    window.on(w -> w.comparison().orElseThrow().frame.dispose());
  }

  @Test
  void whatIsNoCaptureOrNoSheetIsComplainedOfInPlainWords() throws Exception {
    Path empty = Files.writeString(folder.resolve("empty.csv"), "");
    Path zip = Files.write(folder.resolve("cut.csv.gz"), new byte[] {31, (byte) 139, 8, 0});
    Path bad = Files.writeString(folder.resolve("bad.toml"), "[wheel]\npatern = \"36-1\"\n");
    for (Path file : List.of(empty, zip, folder, folder.resolve("gone.csv"))) {
      window.on(w -> w.files.openDropped(List.of(file)));
      window.settle();
      assertThat(notice()).startsWith(file.getFileName() + " could not be opened.\n");
      assertThat(notice()).doesNotContain("Exception").doesNotContain("toothmark.");
    }
    window.on(w -> w.files.openDropped(List.of(bad)));
    window.settle();
    assertThat(notice())
        .isEqualTo(
            "The job sheet could not be used and was left out.\nbad.toml, line 2: wheel.patern: unknown key; the"
                + " nearest known key is wheel.pattern");
    assertThat(window.<Boolean>ask(w -> w.model.examination().isPresent())).isTrue();
  }

  @Test
  void openingTheSameFilesAgainTakesWhatWasChangedInThemMeanwhile() throws Exception {
    Files.writeString(sheet, SHEET.replace("Van", "Boat"));
    window.on(w -> w.files.open(folder.resolve("capture.csv.gz")));
    window.settle();
    assertThat(window.<String>ask(w -> w.model.job.draft.get().get(Field.TITLE))).isEqualTo("Boat");
    assertThat(window.<Boolean>ask(w -> w.model.job.isUnsaved())).isFalse();
  }

  @Test
  void wrongFilesThatAreDroppedAreComplainedOfAndRightOnesOpened() {
    drop(SAMPLES.resolve("README.md"));
    assertThat(window.<String>ask(w -> words(named(all(w), "notice.text"))))
        .startsWith("README.md could not be opened.");
    assertThat(window.<Boolean>ask(w -> w.model.examination().isPresent())).isTrue();
    drop(SAMPLES.resolve("clean-idle/job.toml"), SAMPLES.resolve("clean-idle/capture.csv.gz"));
    assertThat(window.<String>ask(w -> words(named(all(w), "verdict.text"))))
        .startsWith("Nothing wrong was found");
    assertThat(window.<Boolean>ask(w -> w.notice.isVisible())).isFalse();
  }

  @Test
  void filesMayBeDroppedOnEveryPart() {
    for (String side : List.of("job", "findings")) {
      window.run(side);
      window.settle();
      window.on(DeskFilesTest::dropEverywhere);
    }
    window.close();
    window = DrivenWindow.show(new Dimension(1366, 768));
    window.on(DeskFilesTest::dropEverywhere);
  }

  private static void dropEverywhere(DeskWindow w) {
    JRootPane root = w.frame.getRootPane();
    for (int x = 2; x < root.getWidth(); x += 16) {
      for (int y = 2; y < root.getHeight(); y += 8) {
        Component at = SwingUtilities.getDeepestComponentAt(root, x, y);
        while (at.getDropTarget() == null || !at.getDropTarget().isActive()) {
          at = at.getParent();
        }
        assertThat(at).as(x + ", " + y).isSameAs(w.frame);
      }
    }
    assertThat(
            w.frame
                .getTransferHandler()
                .canImport(new TransferHandler.TransferSupport(w.frame, transfer(List.of()))))
        .isTrue();
  }

  @Test
  void ofSeveralCapturesEachAfterTheFirstGetsAWindowOfItsOwn() {
    List<Request> others = new ArrayList<>();
    window.on(w -> w.files.beside = others::addAll);
    Path idle = SAMPLES.resolve("clean-idle/capture.csv.gz");
    Path loose = SAMPLES.resolve("loose-connector/capture.csv.gz");
    drop(idle, loose);
    assertThat(window.<Path>ask(w -> w.model.bench.session.get().orElseThrow().request().capture()))
        .isEqualTo(idle.toFile().toPath());
    assertThat(others).containsExactly(Request.of(loose));
  }

  private void drop(Path... files) {
    Transferable transfer = transfer(Arrays.stream(files).map(Path::toFile).toList());
    window.on(
        w ->
            w.frame
                .getTransferHandler()
                .importData(new TransferHandler.TransferSupport(w.frame, transfer)));
    window.settle();
  }

  private static Transferable transfer(List<java.io.File> files) {
    return new Transferable() {
      @Override
      public DataFlavor[] getTransferDataFlavors() {
        return new DataFlavor[] {DataFlavor.javaFileListFlavor};
      }

      @Override
      public boolean isDataFlavorSupported(DataFlavor flavour) {
        return flavour.equals(DataFlavor.javaFileListFlavor);
      }

      @Override
      public Object getTransferData(DataFlavor flavour) {
        return files;
      }
    };
  }
}
