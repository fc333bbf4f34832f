package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;
import static toothmark.desktop.DrivenWindow.type;
import static toothmark.desktop.DrivenWindow.words;

import java.awt.Component;
import java.awt.Rectangle;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.AbstractButton;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JMenu;
import javax.swing.JPopupMenu;
import javax.swing.JSlider;
import javax.swing.MenuSelectionManager;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.desktop.JobDraft.Field;
import toothmark.findings.Finding;

/** A day's work in the real window; skipped where there is no display. */
class DeskWorkTest {

  private static final Path REFITTED = Path.of("../signal-samples/refitted-wheel");

  private DrivenWindow window;

  @BeforeEach
  void open() throws Exception {
    window = DrivenWindow.onALaptop();
    window.open(REFITTED.resolve("capture.csv.gz"));
  }

  @AfterEach
  void close() {
    if (window != null) {
      window.close();
    }
  }

  @Test
  void aFindingThatIsSelectedIsFollowedByEveryView() {
    window.on(w -> list(w).setSelectedIndex(1));
    window.settle();
    Finding second = window.ask(w -> (Finding) list(w).getSelectedValue());
    assertThat(second.id()).isEqualTo("timing-delay");
    assertThat(window.<Optional<Finding>>ask(w -> w.model.selected.get().finding()))
        .contains(second);
    assertThat(window.<String>ask(w -> w.pictures.current().orElseThrow().getKey()))
        .isEqualTo("advance");
    assertThat(window.<String>ask(w -> words(named(all(w), "finding"))))
        .containsIgnoringWhitespaces(second.title());
  }

  @Test
  void everyPictureShowsTheFindingThatIsPickedOutAndTheToothOfIt() {
    window.open(REFITTED.resolveSibling("dropped-spanner/capture.csv.gz"));
    window.on(w -> w.model.selectTooth(1));
    window.on(w -> w.pictures.show("speed"));
    window.run("showAll");
    window.settle();
    Map<String, Integer> before = pictures();
    assertThat(pictures()).as("what is drawn twice looks the same").isEqualTo(before);
    // it is picked out already: a click goes back to its proof
    window.on(w -> click(list(w)));
    window.settle();
    Map<String, Integer> after = pictures();
    assertThat(window.<String>ask(w -> w.pictures.current().orElseThrow().getKey()))
        .isEqualTo("wheel");
    before.forEach((part, look) -> assertThat(after.get(part)).as(part).isNotEqualTo(look));
    double there = window.ask(w -> w.model.selected.get().instant().orElseThrow());
    assertThat(window.<Boolean>ask(w -> w.model.view.get().orElseThrow().shown().contains(there)))
        .isTrue();
    assertThat(window.<String>ask(w -> ((JLabel) named(all(w), "readout.tooth")).getText()))
        .startsWith("23  ");
  }

  /** What the parts look like that follow a selection. */
  private Map<String, Integer> pictures() {
    return window.ask(
        w ->
            Stream.of(w.trace, w.strip, w.wheel, named(all(w), "readout"))
                .collect(Collectors.toMap(Component::getName, DeskWorkTest::look)));
  }

  private static void click(JList<?> list) {
    Rectangle first = list.getCellBounds(0, 0);
    for (int id :
        new int[] {MouseEvent.MOUSE_PRESSED, MouseEvent.MOUSE_RELEASED, MouseEvent.MOUSE_CLICKED}) {
      list.dispatchEvent(
          new MouseEvent(
              list,
              id,
              1,
              0,
              (int) first.getCenterX(),
              (int) first.getCenterY(),
              1,
              false,
              MouseEvent.BUTTON1));
    }
  }

  private static int look(Component part) {
    BufferedImage image =
        new BufferedImage(part.getWidth(), part.getHeight(), BufferedImage.TYPE_INT_RGB);
    part.paint(image.getGraphics());
    return Arrays.hashCode(
        image.getRGB(0, 0, part.getWidth(), part.getHeight(), null, 0, part.getWidth()));
  }

  @Test
  void whatANewUserAsksStandsInTheUpperBand() {
    assertThat(band("verdict.next")).contains("move the sensor 4.4").contains("against the rot");
    window.open(REFITTED.resolveSibling("dropped-spanner/capture.csv.gz"));
    assertThat(band("verdict.text")).isEqualTo("Tooth 23 of the trigger wheel is bent or damaged.");
    window.open(REFITTED.resolveSibling("loose-connector/capture.csv.gz"));
    assertThat(band("verdict.text"))
        .isEqualTo("The crank signal drops out: a wire or plug is opening.");
    for (int i = 0; i < 13 && !band("event").contains("sync lost"); i++) {
      window.run("nextEvent");
    }
    assertThat(band("event")).contains("sync lost").endsWith("intermittent connection");
  }

  private String band(String name) {
    return window.ask(w -> words(named(all(w), name)));
  }

  @Test
  void cancellingLeavesWhatIsOpen() {
    window.on(
        w -> {
          w.model.bench.open(Request.of(REFITTED.resolveSibling("clean-idle/capture.csv.gz")));
          ((JButton) named(all(w), "cancel")).doClick();
        });
    window.settle();
    assertThat(window.<Path>ask(w -> w.model.bench.session.get().orElseThrow().request().capture()))
        .isEqualTo(REFITTED.resolve("capture.csv.gz"));
    assertThat(window.<Boolean>ask(w -> named(all(w), "progress").isVisible())).isFalse();
  }

  @Test
  void whatIsTypedForTheReportStandsOnThePageAndInThePdf(@TempDir Path folder) throws Exception {
    window.run("job");
    window.on(w -> type(w, Field.SHOP, "Quillmere Motor Works"));
    window.on(w -> type(w, Field.NOTES, "Bolt of the pulley was loose"));
    window.settle();
    window.on(w -> w.files.writeReport(folder));
    window.settle();
    assertThat(window.<String>ask(w -> words(named(all(w), "notice.text"))))
        .isEqualTo("The report was written: " + folder.resolve("report.html"));
    assertThat(Files.readString(folder.resolve("report.html")))
        .contains("Quillmere Motor Works")
        .contains("Bolt of the pulley was loose");
    Path pdf;
    try (Stream<Path> files = Files.list(folder)) {
      pdf = files.filter(f -> f.toString().endsWith(".pdf")).findFirst().orElseThrow();
    }
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(new PDFTextStripper().getText(document))
          .contains("Quillmere Motor Works")
          .contains("Bolt of the pulley was loose");
    }
  }

  @Test
  void aChangeOfTheJobIsExaminedAndTakenBackAndMadeAgain() {
    double told = alignment();
    window.on(w -> type(w, Field.TOOTH1, "80"));
    window.settle();
    // the nominal angle is taken off what was measured
    double nominal = 90;
    assertThat(alignment()).isCloseTo(told + nominal - 80, within(1e-6));
    window.run("undo");
    window.settle();
    assertThat(alignment()).isEqualTo(told);
    window.run("redo");
    window.settle();
    assertThat(alignment()).isCloseTo(told + nominal - 80, within(1e-6));
  }

  private double alignment() {
    return window.ask(
        w ->
            w.model
                .examination()
                .orElseThrow()
                .observations()
                .timing()
                .alignment()
                .orElseThrow()
                .errorDegrees()
                .orElseThrow()
                .value());
  }

  @Test
  void whatCannotBeTakenBackIsNotOffered() {
    assertThat(offered()).containsExactly(false, false);
    window.on(w -> type(w, Field.NOTES, "call back on Friday"));
    assertThat(offered()).containsExactly(true, false);
    window.run("undo");
    assertThat(offered()).containsExactly(false, true);
  }

  private List<Boolean> offered() {
    return window.ask(
        w -> List.of(w.commands.get("undo").isEnabled(), w.commands.get("redo").isEnabled()));
  }

  @Test
  void whatIfAnswersWhileTheSliderMoves() throws Exception {
    window.open(REFITTED.resolveSibling("weak-on-the-starter/capture.csv.gz"));
    window.run("whatIf");
    window.settle();
    Set<Object> answers = new HashSet<>();
    window.on(w -> w.model.whatIf.outcome.watch(answers::add));
    long until = System.currentTimeMillis() + 10_000;
    for (int i = 0; answers.isEmpty() && System.currentTimeMillis() < until; i++) {
      int value = 20 + i % 60;
      window.on(w -> ((JSlider) named(all(w), "whatIf.level")).setValue(value));
      Thread.sleep(20);
    }
    assertThat(answers).isNotEmpty();
  }

  @Test
  void aChannelGetsItsRoleFromTheMenuOfMouseAndKeyboard() {
    window.run("trace");
    window.settle();
    window.on(
        w ->
            w.trace.dispatchEvent(
                new MouseEvent(
                    w.trace,
                    MouseEvent.MOUSE_PRESSED,
                    1,
                    0,
                    400,
                    60,
                    1,
                    true,
                    MouseEvent.BUTTON3)));
    List<String> byMouse = window.ask(w -> texts(popup()));
    window.run("saveTrace");
    window.on(
        w -> {
          JMenu first = (JMenu) popup().getComponent(0);
          assertThat(byMouse).startsWith(texts(first.getPopupMenu()).toArray(new String[0]));
          assertThat(byMouse)
              .startsWith(
                  "CH1 is the crank sensor",
                  "CH1 marks TDC of cylinder 1",
                  "CH1 is " + w.model.job.draft.get().coils().get(0).name());
          choose("CH2", 3);
        });
    assertThat(coilChannels()).containsExactly("CH3", "CH2");
    window.run("saveTrace");
    window.on(w -> choose("CH4", 5));
    assertThat(window.<String>ask(w -> w.model.job.draft.get().get(Field.TDC))).isEmpty();
    window.run("saveTrace");
    window.on(w -> choose("CH4", 4));
    assertThat(coilChannels()).containsExactly("CH3", "CH2", "CH4");
    assertThat(window.<Boolean>ask(w -> named(all(w), "job").isShowing())).isTrue();
    window.settle();
  }

  private List<String> coilChannels() {
    return window.ask(w -> w.model.job.draft.get().coils().stream().map(c -> c.channel()).toList());
  }

  private static JPopupMenu popup() {
    return (JPopupMenu) MenuSelectionManager.defaultManager().getSelectedPath()[0];
  }

  private static void choose(String channel, int item) {
    JMenu menu = (JMenu) named(popup(), "channel." + channel);
    menu.getItem(item).doClick();
    MenuSelectionManager.defaultManager().clearSelectedPath();
  }

  private static List<String> texts(JPopupMenu menu) {
    return Arrays.stream(menu.getComponents())
        .filter(c -> c instanceof AbstractButton)
        .map(c -> ((AbstractButton) c).getText())
        .toList();
  }

  @Test
  void aFindingAboutAToothMarksIt() {
    window.open(REFITTED.resolveSibling("dropped-spanner/capture.csv.gz"));
    window.on(w -> w.model.selectTooth(1));
    window.on(w -> list(w).clearSelection());
    window.on(w -> list(w).setSelectedIndex(0));
    window.settle();
    assertThat(window.<String>ask(w -> ((JLabel) named(all(w), "readout.tooth")).getText()))
        .startsWith("23  ");
    assertThat(window.<Integer>ask(w -> w.model.selected.get().tooth().orElse(0))).isEqualTo(23);
  }

  @Test
  void theCrankIsTurnedByKeysAndPlayed() {
    window.on(w -> w.model.selectTooth(1));
    window.run("toothOn");
    assertThat(window.<Integer>ask(w -> w.model.selected.get().tooth().orElseThrow())).isEqualTo(2);
    window.run("toothBack");
    window.run("toothBack");
    // a 36-1 wheel has 35 teeth
    assertThat(window.<Integer>ask(w -> w.model.selected.get().tooth().orElseThrow()))
        .isEqualTo(35);
    double before = window.ask(w -> w.model.selected.get().instant().orElseThrow());
    window.run("play");
    window.settle();
    window.run("play");
    assertThat(window.<Double>ask(w -> w.model.selected.get().instant().orElseThrow()))
        .isGreaterThan(before);
  }

  private static JList<?> list(DeskWindow w) {
    return (JList<?>) named(all(w), "findings");
  }
}
