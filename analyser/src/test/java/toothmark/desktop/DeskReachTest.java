package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.desktop.DrivenWindow.named;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.swing.Action;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JMenu;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import javax.swing.JViewport;
import javax.swing.KeyStroke;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import toothmark.chart.Ink;

/** Whether everything in the window can be read and reached; skipped without a display. */
class DeskReachTest {

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
  void everyControlThatTakesTheFocusHasANameToBeReadOut() {
    window.on(w -> check(w.frame.getContentPane()));
  }

  @Test
  void picturesAndWhatOneTypesInAreReachedByWhatReadsTheWindowOut() {
    window.run("job");
    window.run("addCoil");
    window.settle();
    window.on(
        w -> {
          List<String> spoken = new ArrayList<>();
          speak(w.frame, spoken);
          assertThat(spoken)
              .contains(
                  Phrases.of("trace.name"), Phrases.of("strip.name"), Phrases.of("wheel.name"));
          int last = w.model.job.draft.get().coils().size() - 1;
          JComboBox<?> channel =
              (JComboBox<?>) named(w.frame.getContentPane(), "coil.channel." + last);
          assertThat(
                  channel
                      .getEditor()
                      .getEditorComponent()
                      .getAccessibleContext()
                      .getAccessibleName())
              .isEqualTo(Phrases.of("coil.channel"));
        });
  }

  private static void speak(Accessible part, List<String> spoken) {
    AccessibleContext context = part.getAccessibleContext();
    spoken.add(context.getAccessibleName());
    for (int i = 0; i < context.getAccessibleChildrenCount(); i++) {
      speak(context.getAccessibleChild(i), spoken);
    }
  }

  private static void check(Container c) {
    for (Component part : c.getComponents()) {
      boolean ours =
          part instanceof PictureView
              || part instanceof JTextField
              || part instanceof javax.swing.AbstractButton
              || part instanceof javax.swing.JList;
      if (ours && part.isFocusable() && part.isShowing()) {
        String spoken = part.getAccessibleContext().getAccessibleName();
        assertThat(spoken).as(part.getClass() + " " + part.getName()).isNotBlank();
      }
      if (part instanceof Container inner
          && !(part instanceof javax.swing.JScrollBar)
          && !(part instanceof javax.swing.JSplitPane)
          && !(part instanceof javax.swing.JComboBox)) {
        check(inner);
      }
    }
  }

  @Test
  void nothingIsCutNorWhereTheTypeIsHalfAsLargeAgain() throws Exception {
    noneIsCut();
    window.close();
    wear(1.5, Ink.LIGHT);
    try {
      window = DrivenWindow.show(new Dimension(1366, 768));
      assertThat(window.<List<String>>ask(w -> cut(w.frame.getRootPane()))).isEmpty();
      window.openSample();
      window.run("nextEvent");
      noneIsCut();
      chosenTabsAreInView();
      besideAnotherTheTraceHasRoom();
    } finally {
      wear(1, Ink.LIGHT);
    }
  }

  @Test
  void wordsThatComeTakeNoMoreRoomThanTheyFill() {
    window.on(w -> w.frame.setSize(520, 768));
    window.settle();
    window.on(w -> w.notice.putAway());
    window.on(w -> w.frame.setSize(1366, 768));
    window.settle();
    window.on(w -> w.notice.say("A word. ".repeat(80)));
    window.settle();
    window.on(
        w -> {
          for (String name : List.of("notice", "verdict")) {
            Container band = (Container) named(w.frame.getContentPane(), name);
            int needed = band.getLayout().preferredLayoutSize(band).height;
            assertThat(band.getHeight()).as(name).isEqualTo(needed);
          }
        });
  }

  @Test
  void aWindowThatIsOpenTakesAnotherLookAsANewOneDoes() throws Exception {
    try {
      wear(1.4, Ink.DARK);
      window.on(DeskWindow::redress);
      window.settle();
      bringEachToFront();
      List<String> redressed = window.ask(DeskReachTest::looks);
      window.close();
      window = DrivenWindow.show(new Dimension(1366, 768));
      window.openSample();
      bringEachToFront();
      assertThat(redressed)
          .containsExactlyElementsOf(window.<List<String>>ask(DeskReachTest::looks));
    } finally {
      wear(1, Ink.LIGHT);
    }
  }

  /** Those behind take the look when they come to front. */
  private void bringEachToFront() {
    for (JTabbedPane tabs : List.of(window.ask(w -> w.pictures.tabs()), window.ask(w -> w.side))) {
      for (int i = tabs.getTabCount() - 1; i >= 0; i--) {
        int tab = i;
        window.on(w -> tabs.setSelectedIndex(tab));
        window.settle();
      }
    }
  }

  /** Type, colour and border of every part, and the colour of the frame of the strip. */
  private static List<String> looks(DeskWindow w) {
    List<String> looks = new ArrayList<>();
    looks(w.frame.getContentPane(), looks);
    BufferedImage image =
        new BufferedImage(w.strip.getWidth(), w.strip.getHeight(), BufferedImage.TYPE_INT_RGB);
    w.strip.paint(image.getGraphics());
    looks.add("strip framed in " + Integer.toHexString(image.getRGB(0, 0)));
    return looks;
  }

  private static void looks(Container in, List<String> looks) {
    for (Component part : in.getComponents()) {
      if (part instanceof JLabel || part instanceof JTextComponent || part instanceof JScrollPane) {
        String said =
            part instanceof JLabel l
                ? l.getText()
                : part instanceof JTextComponent t ? t.getText() : part.getName();
        looks.add(
            "%s %s: %.1f %s, %08x, %s"
                .formatted(
                    part.getClass().getSimpleName(),
                    said,
                    part.getFont().getSize2D(),
                    part.getFont().getName(),
                    part.getForeground().getRGB(),
                    ((JComponent) part).getInsets()));
      }
      if (part instanceof Container inner) {
        looks(inner, looks);
      }
    }
  }

  private void noneIsCut() {
    for (String side : List.of("whatIf", "measures", "job", "findings")) {
      window.run(side);
      window.settle();
      assertThat(window.<List<String>>ask(w -> cut(w.frame.getRootPane()))).as(side).isEmpty();
    }
  }

  private void chosenTabsAreInView() {
    for (int i = 0; i < window.<Integer>ask(w -> w.pictures.tabs().getTabCount()); i++) {
      int tab = i;
      window.on(w -> w.pictures.tabs().setSelectedIndex(tab));
      window.settle();
      window.on(
          w -> {
            JTabbedPane tabs = w.pictures.tabs();
            Rectangle chosen = tabs.getUI().getTabBounds(tabs, tab);
            assertThat(bar(tabs).getBounds().contains(chosen)).as(tabs.getTitleAt(tab)).isTrue();
          });
    }
  }

  @Test
  void onASmallWindowTheTabsStandInOneRowAlsoInLargerType() throws Exception {
    for (double larger : new double[] {1, 1.5, 2}) {
      window.close();
      wear(larger, Ink.LIGHT);
      try {
        window = DrivenWindow.show(new Dimension(900, 600));
        window.run("job");
        window.settle();
        window.run("whatIf");
        window.settle();
        window.on(
            w -> {
              assertThat(w.side.getTabRunCount()).isEqualTo(1);
              Rectangle chosen = w.side.getUI().getTabBounds(w.side, 3);
              assertThat(bar(w.side).getBounds().contains(chosen)).as("at " + larger).isTrue();
            });
      } finally {
        wear(1, Ink.LIGHT);
      }
    }
  }

  private static void wear(double larger, Ink ink) throws Exception {
    javax.swing.SwingUtilities.invokeAndWait(
        () -> {
          Look.enlarge(larger);
          Look.wear(ink);
        });
  }

  private static Component bar(JTabbedPane tabs) {
    return Stream.of(tabs.getComponents())
        .filter(JViewport.class::isInstance)
        .findFirst()
        .orElseThrow();
  }

  private void besideAnotherTheTraceHasRoom() throws Exception {
    window.on(w -> w.files.open(SAMPLES.resolve("refitted-wheel/capture.csv.gz")));
    window.on(w -> w.frame.setSize(683, 768));
    window.run("trace");
    window.settle();
    window.on(
        w -> {
          assertThat(w.trace.getHeight()).isGreaterThan(w.frame.getHeight() / 3);
          Component words = named(w.frame.getContentPane(), "verdict.text");
          assertThat(words.getWidth()).isGreaterThan(w.frame.getWidth() * 3 / 4);
        });
  }

  /**
   * Buttons and labels that show less than their words, and parts of a column that reach beyond its
   * edge.
   */
  private static List<String> cut(Container in) {
    List<String> cut = new ArrayList<>();
    for (Component part : in.getComponents()) {
      boolean worded = part instanceof javax.swing.AbstractButton || part instanceof JLabel;
      if (worded && part.isShowing() && part.getWidth() < part.getPreferredSize().width) {
        cut.add(part.toString());
      }
      if (in instanceof Column
          && part.isShowing()
          && part.getX() + part.getWidth() > in.getWidth()) {
        cut.add("beyond the edge: " + part);
      }
      if (part instanceof Container inner && !(part instanceof javax.swing.JComboBox)) {
        cut.addAll(cut(inner));
      }
    }
    return cut;
  }

  @Test
  void onALargeScreenTheFiguresReachDownToTheStrip() throws Exception {
    window.close();
    window = DrivenWindow.show(new Dimension(2560, 1440));
    window.settle();
    window.openSample();
    window.on(
        w -> {
          Container split = w.pictures.tabs().getParent();
          assertThat(split).isInstanceOf(javax.swing.JSplitPane.class);
          assertThat(w.pictures.tabs().getY() + w.pictures.tabs().getHeight())
              .isEqualTo(split.getHeight());
          // above the strip there is only its margin
          int gap =
              javax.swing.SwingUtilities.convertPoint(w.strip, 0, 0, split).y - split.getHeight();
          assertThat(gap).isBetween(0, 8);
        });
  }

  @Test
  void aFigureIsZoomedAndMovedByKeys() {
    window.on(w -> w.pictures.show("speed"));
    window.settle();
    double whole = window.ask(DeskReachTest::width);
    window.on(w -> key(DrivenWindow.named(w.frame.getContentPane(), "canvas.speed"), "PLUS"));
    assertThat(window.<Double>ask(DeskReachTest::width)).isLessThan(0.9 * whole);
    double from = window.ask(w -> axis(w).getLowerBound());
    window.on(w -> key(DrivenWindow.named(w.frame.getContentPane(), "canvas.speed"), "RIGHT"));
    assertThat(window.<Double>ask(w -> axis(w).getLowerBound())).isGreaterThan(from);
    window.on(w -> key(DrivenWindow.named(w.frame.getContentPane(), "canvas.speed"), "0"));
    window.settle();
    assertThat(window.<Double>ask(DeskReachTest::width)).isEqualTo(whole);
  }

  private static double width(DeskWindow w) {
    return axis(w).getRange().getLength();
  }

  private static org.jfree.chart.axis.ValueAxis axis(DeskWindow w) {
    return w.pictures.current().orElseThrow().getValue().figure().orElseThrow().timeAxis().get();
  }

  private static void key(Component c, String key) {
    KeyStroke stroke = KeyStroke.getKeyStroke(key);
    ((JComponent) c)
        .getActionForKeyStroke(stroke)
        .actionPerformed(new java.awt.event.ActionEvent(c, 0, key));
  }

  @Test
  void everyCommandIsInAMenuOrOnAButtonAndEveryKeyIsTold() {
    window.run("keys");
    window.on(
        w -> {
          Container menus = w.frame.getJMenuBar();
          List<String> offered = new ArrayList<>();
          collect(menus, offered);
          collect(w.frame.getContentPane(), offered);
          // pictures have keys of their own for these, told in the help
          offered.addAll(List.of("left", "right", "pageLeft", "pageRight", "start", "end"));
          offered.addAll(List.of("turnOn", "turnBack", "saveTrace"));
          assertThat(w.commands.names()).isSubsetOf(offered);
          List<String> told = new ArrayList<>();
          for (java.awt.Window dialog : w.frame.getOwnedWindows()) {
            if ("keys".equals(dialog.getName())) {
              labels(dialog, told);
              dialog.dispose();
            }
          }
          assertThat(told).containsAll(w.commands.keys().keySet()).contains("F1");
        });
  }

  private static void collect(Container in, List<String> commands) {
    Component[] parts = in instanceof JMenu m ? m.getMenuComponents() : in.getComponents();
    for (Component part : parts) {
      if (part instanceof javax.swing.AbstractButton b && b.getAction() != null) {
        commands.add(String.valueOf(b.getAction().getValue(Action.ACTION_COMMAND_KEY)));
      }
      if (part instanceof Container inner) {
        collect(inner, commands);
      }
    }
  }

  private static void labels(Container in, List<String> words) {
    for (Component part : in.getComponents()) {
      if (part instanceof JLabel l) {
        words.add(l.getText());
      } else if (part instanceof Container inner) {
        labels(inner, words);
      }
    }
  }
}
