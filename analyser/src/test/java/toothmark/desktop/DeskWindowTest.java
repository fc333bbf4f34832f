package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** The real window, worked with events; skipped where there is no display. */
class DeskWindowTest {

  private static final Path SAMPLES = Path.of("../signal-samples");

  private DrivenWindow window;

  @BeforeEach
  void open() throws Exception {
    window = DrivenWindow.onALaptop();
    window.openSample();
  }

  @AfterEach
  void close() {
    if (window != null) {
      window.close();
    }
  }

  @Test
  void theSampleShowsItsVerdictFindingAndWhatToLookAt() {
    assertThat(window.<String>ask(w -> text(w, "verdict.text")))
        .isEqualTo("The crank signal drops out: a wire or plug is opening.");
    assertThat(window.<Boolean>ask(w -> named(w, "notice").isVisible())).isTrue();
    assertThat(window.<Integer>ask(w -> w.model.events().size())).isPositive();
    // the trace shows the proof: the first place where the signal is flat
    assertThat(window.<Boolean>ask(w -> w.trace.isShowing())).isTrue();
    double flat =
        window.ask(
            w -> w.model.selected.get().finding().orElseThrow().where().get(0).startInclusive());
    assertThat(shown().contains(flat)).isTrue();
    assertThat(window.<Boolean>ask(w -> w.model.view.get().orElseThrow().isAll())).isFalse();
  }

  @Test
  void theWheelOfTheMouseZoomsAboutThePointerAndTheStripFollows() {
    window.run("showAll");
    window.run("trace");
    Interval before = shown();
    window.on(
        w ->
            w.trace.dispatchEvent(
                new MouseWheelEvent(
                    w.trace, MouseEvent.MOUSE_WHEEL, 1, 0, 400, 100, 0, false, 0, 3, -4)));
    assertThat(shown().seconds()).isBetween(0.3 * before.seconds(), 0.5 * before.seconds());
  }

  @Test
  void draggingMovesTheViewByWhatThePointerMoved() {
    window.run("nextEvent");
    window.settle();
    Interval before = shown();
    window.on(
        w -> {
          mouse(w.trace, MouseEvent.MOUSE_PRESSED, 400);
          mouse(w.trace, MouseEvent.MOUSE_DRAGGED, 300);
          mouse(w.trace, MouseEvent.MOUSE_RELEASED, 300);
        });
    assertThat(shown().startInclusive()).isGreaterThan(before.startInclusive());
    assertThat(shown().seconds())
        .isEqualTo(before.seconds(), org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void keysOfThePictureWalkTheEvents() {
    window.on(w -> press(w.trace, "N"));
    double first = window.ask(w -> w.model.selected.get().instant().orElseThrow());
    window.on(w -> press(w.trace, "N"));
    double second = window.ask(w -> w.model.selected.get().instant().orElseThrow());
    assertThat(second).isGreaterThan(first);
    window.on(w -> press(w.trace, "P"));
    assertThat(window.<Double>ask(w -> w.model.selected.get().instant().orElseThrow()))
        .isEqualTo(first);
  }

  @Test
  void aToothPickedOnTheWheelIsPickedInTheTraceAndTheReadout() {
    window.on(
        w -> {
          int x = w.wheel.getWidth() / 2;
          int y = w.wheel.getHeight() / 2;
          w.model.selectTooth(15);
          // as far as the crank has turned after tooth 1 this stands to the left of the sensor
          double left =
              Math.toRadians(
                  w.model.degreesAt(w.model.selected.get().instant().orElseThrow()).orElseThrow());
          w.wheel.paintImmediately(0, 0, w.wheel.getWidth(), w.wheel.getHeight());
          click(
              w.wheel,
              (int) Math.round(x - 60 * Math.sin(left)),
              (int) Math.round(y - 60 * Math.cos(left)));
        });
    assertThat(window.<Integer>ask(w -> w.model.selected.get().tooth().orElse(0))).isEqualTo(1);
    assertThat(window.<String>ask(w -> ((javax.swing.JLabel) named(w, "readout.tooth")).getText()))
        .startsWith("1  ");
  }

  @Test
  void theReadoutOfAToothThatDidNotComeSaysSoAndThatOfTheSameToothInOtherTurnsDoesNot() {
    ToothEvents teeth = window.ask(w -> w.model.examination().orElseThrow().teeth().orElseThrow());
    int gone = 0;
    while (teeth.kind(gone) != ToothKind.MISSING) {
      gone++;
    }
    int tooth = teeth.tooth(gone);
    int seen = 0;
    while (teeth.kind(seen) != ToothKind.SEEN || teeth.tooth(seen) != tooth) {
      seen++;
    }
    assertThat(readoutAt(teeth.time(gone))).isEqualTo(tooth + ", no edge came");
    assertThat(readoutAt(teeth.time(seen))).startsWith(tooth + "  ").contains("signal");
  }

  private String readoutAt(double time) {
    window.on(w -> w.model.selectInstant(time));
    return window.ask(w -> ((javax.swing.JLabel) named(w, "readout.tooth")).getText());
  }

  @Test
  void aWrongPatternIsComplainedOfBesideItsFieldAndARightOneExaminedAgain() {
    window.run("job");
    window.on(w -> field(w, "field.wheel.pattern").setText("60-"));
    assertThat(window.<String>ask(w -> text(w, "complaint.wheel.pattern")))
        .startsWith("\"60-\" is not a wheel");
    window.on(w -> field(w, "field.wheel.pattern").setText("60-2"));
    window.settle();
    assertThat(
            window.<String>ask(
                w ->
                    w.model
                        .examination()
                        .orElseThrow()
                        .sheet()
                        .wheel()
                        .pattern()
                        .orElseThrow()
                        .toString()))
        .isEqualTo("60-2");
    window.run("undo");
    window.settle();
    assertThat(window.<String>ask(w -> field(w, "field.wheel.pattern").getText())).isEmpty();
  }

  @Test
  void aThresholdAboveTheSignalLosesEveryToothInTheWhatIf() {
    window.open(SAMPLES.resolve("weak-on-the-starter/capture.csv.gz"));
    window.run("whatIf");
    window.on(w -> w.model.whatIf.setting.set(new WhatIf.Setting(WhatIf.Circuit.FIXED, 0, 0)));
    window.settle();
    int low = window.ask(DeskWindowTest::teethLost);
    window.on(w -> ((javax.swing.JSlider) named(w, "whatIf.level")).setValue(2000));
    window.settle();
    assertThat(window.<Integer>ask(DeskWindowTest::teethLost)).isGreaterThan(low);
  }

  private static int teethLost(DeskWindow w) {
    return w.model.whatIf.outcome.get().orElseThrow().tried().teethLost();
  }

  @Test
  void aWrongFileIsComplainedOfAndTheOldStays() {
    window.open(SAMPLES.resolve("README.md"));
    assertThat(window.<String>ask(w -> text(w, "notice.text")))
        .startsWith("README.md could not be opened.\nREADME.md: ");
    assertThat(window.<Boolean>ask(w -> w.model.examination().isPresent())).isTrue();
  }

  @Test
  void aPictureIsSavedAsTheNameSays(@TempDir Path folder) throws Exception {
    window.on(w -> w.pictures.show("speed"));
    window.settle();
    var figure =
        window.ask(w -> w.pictures.current().orElseThrow().getValue().figure().orElseThrow());
    String svg =
        new String(
            PictureFile.bytes(figure, folder.resolve("speed.svg")),
            java.nio.charset.StandardCharsets.UTF_8);
    assertThat(svg).startsWith("<?xml").contains("<svg").contains("rev/min");
    byte[] png = PictureFile.bytes(figure, folder.resolve("speed.PNG"));
    Files.write(folder.resolve("speed.PNG"), png);
    assertThat(javax.imageio.ImageIO.read(folder.resolve("speed.PNG").toFile()).getWidth())
        .isEqualTo(1520);
  }

  @Test
  void aReadingTypedAtTheBenchIsAnsweredAtOnce() {
    window.run("aid.piston");
    window.on(w -> reading(w).setValueAt("21", 0, 0));
    assertThat(window.<String>ask(w -> benchText(w, "aid.complaint")))
        .isEqualTo("After TDC, °: type a number");
    window.on(w -> reading(w).setValueAt("15", 0, 1));
    assertThat(window.<String>ask(w -> benchText(w, "aid.answer")))
        .startsWith("At true top dead centre the pointer reads 3.00");
    window.on(w -> w.aids().dialog.dispose());
  }

  /** What is typed stays for the engine that it was typed for. */
  @Test
  void thePlanAtTheBenchBeginsWithTheSheetOfTheEngineThatIsOpen() {
    window.run("aid.firing");
    assertThat(plan()).containsExactly("36-1", "114.0", "1, 3, 4, 2", "3");
    window.on(w -> field(w, "field.wheel.tooth1_btdc_deg").setText("87,5"));
    window.on(w -> planned(w, "dwell").setText("4"));
    window.on(w -> field(w, "field.wheel.tooth1_btdc_deg").setText("88"));
    window.settle();
    assertThat(plan()).containsExactly("36-1", "88.0", "1, 3, 4, 2", "4");
    window.open(SAMPLES.resolve("clean-idle/capture.csv.gz"));
    assertThat(plan()).containsExactly("36-1", "90.0", "1, 3, 4, 2", "3");
    window.on(w -> w.aids().dialog.dispose());
  }

  private List<String> plan() {
    return window.ask(
        w ->
            Stream.of("wheel", "tooth1", "order", "dwell")
                .map(f -> planned(w, f).getText())
                .toList());
  }

  private static JTextField planned(DeskWindow w, String field) {
    return (JTextField) DrivenWindow.named(w.aids().dialog.getContentPane(), "aid." + field);
  }

  @Test
  void coilsTakenOutOneByOneComeBackOneByOne() {
    window.open(SAMPLES.resolve("clean-idle/capture.csv.gz"));
    int all = window.ask(w -> w.model.job.draft.get().coils().size());
    window.on(w -> press(named(w, "coil.remove.0")));
    window.on(w -> press(named(w, "coil.remove.0")));
    window.run("undo");
    assertThat(window.<Integer>ask(w -> w.model.job.draft.get().coils().size())).isEqualTo(all - 1);
    window.run("undo");
    assertThat(window.<Integer>ask(w -> w.model.job.draft.get().coils().size())).isEqualTo(all);
    window.settle();
  }

  private static void press(Component button) {
    ((AbstractButton) button).doClick();
  }

  private static javax.swing.JTable reading(DeskWindow w) {
    return (javax.swing.JTable)
        DrivenWindow.named(w.aids().dialog.getContentPane(), "aid.readings");
  }

  private static String benchText(DeskWindow w, String name) {
    return ((javax.swing.text.JTextComponent)
            DrivenWindow.named(w.aids().dialog.getContentPane(), name))
        .getText();
  }

  @Test
  void theNextEventIsTheFirstInViewAndTheKeysOfTheTraceWorkAtOnce() {
    window.open(SAMPLES.resolve("weak-on-the-starter/capture.csv.gz"));
    window.on(w -> w.model.selected.set(Selected.NOTHING));
    window.run("showAll");
    window.run("nextEvent");
    window.settle();
    assertThat(window.<String>ask(w -> text(w, "event"))).startsWith("1 of ");
    assertThat(window.<Boolean>ask(w -> w.trace.isShowing())).isTrue();
    assertThat(window.<Boolean>ask(w -> w.model.view.get().orElseThrow().isAll())).isFalse();
  }

  @Test
  void whereThereIsNoEventNoneIsOffered() {
    assertThat(window.<Boolean>ask(w -> w.commands.get("nextEvent").isEnabled())).isTrue();
    window.open(SAMPLES.resolve("clean-idle/capture.csv.gz"));
    assertThat(window.<Boolean>ask(w -> w.commands.get("nextEvent").isEnabled())).isFalse();
    assertThat(window.<String>ask(w -> text(w, "event")))
        .isEqualTo("No sync loss, stray or missing tooth");
  }

  private Interval shown() {
    return window.ask(w -> w.model.view.get().orElseThrow().shown());
  }

  private static String text(DeskWindow w, String name) {
    return ((javax.swing.text.JTextComponent) named(w, name)).getText();
  }

  private static JTextField field(DeskWindow w, String name) {
    return (JTextField) named(w, name);
  }

  private static Component named(DeskWindow w, String name) {
    return DrivenWindow.named(w.frame.getContentPane(), name);
  }

  private static void press(JComponent c, String key) {
    KeyStroke stroke = KeyStroke.getKeyStroke(key);
    Object name = c.getInputMap(JComponent.WHEN_FOCUSED).get(stroke);
    assertThat(name).as(key).isNotNull();
    javax.swing.SwingUtilities.notifyAction(
        c.getActionMap().get(name),
        stroke,
        new KeyEvent(c, KeyEvent.KEY_PRESSED, 1, 0, stroke.getKeyCode(), KeyEvent.CHAR_UNDEFINED),
        c,
        0);
  }

  private static void click(Component c, int x, int y) {
    for (int id : new int[] {MouseEvent.MOUSE_PRESSED, MouseEvent.MOUSE_RELEASED}) {
      c.dispatchEvent(
          new MouseEvent(
              c, id, 1, InputEvent.BUTTON1_DOWN_MASK, x, y, 1, false, MouseEvent.BUTTON1));
    }
  }

  private static void mouse(Component c, int id, int x) {
    c.dispatchEvent(
        new MouseEvent(
            c, id, 1, InputEvent.BUTTON1_DOWN_MASK, x, 100, 1, false, MouseEvent.BUTTON1));
  }
}
