package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.event.InputEvent;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JSlider;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import toothmark.chart.Figure;
import toothmark.chart.Ink;
import toothmark.units.Interval;

/** The pictures of the real window, and how they hang together; skipped without a display. */
class DeskPicturesTest {

  private static final Path REFITTED = Path.of("../signal-samples/refitted-wheel/capture.csv.gz");

  private DrivenWindow window;

  @BeforeEach
  void open() throws Exception {
    window = DrivenWindow.onALaptop();
    window.open(REFITTED);
  }

  @AfterEach
  void close() {
    if (window != null) {
      window.close();
    }
  }

  @Test
  void anyChannelIsLaidOverItselfByOneTurnOrOneCycle() {
    show("turns");
    assertThat(window.<String>ask(w -> figure(w).answer())).startsWith("All 81 turns ");
    window.on(w -> ((JComboBox<?>) named(w, "fold.by")).setSelectedIndex(1));
    window.settle();
    assertThat(window.<String>ask(w -> figure(w).answer())).startsWith("All 40 cycles of 720° ");
    assertThat(window.<Double>ask(w -> across(w).getUpperBound())).isEqualTo(720);
    window.on(w -> ((JComboBox<?>) named(w, "fold.channel")).setSelectedItem("CH3"));
    window.settle();
    assertThat(
            window.<String>ask(
                w -> ((XYPlot) figure(w).chart().getPlot()).getRangeAxis().getLabel()))
        .isEqualTo("CH3 (V)");
  }

  @Test
  void zoomingATimeFigureIsTheViewOfTheTraceAndTheOtherWayRound() {
    show("speed");
    window.on(w -> wheel(named(w, "canvas.speed"), -6));
    Interval shown = window.ask(DeskPicturesTest::shown);
    assertThat(shown.seconds()).isLessThan(0.6 * window.<Double>ask(w -> whole(w).seconds()));
    assertThat(window.<Interval>ask(DeskPicturesTest::ofFigure)).isEqualTo(shown);
    double middle = (shown.startInclusive() + shown.endExclusive()) / 2;
    window.on(w -> w.model.show(new Interval(middle, middle + 0.01)));
    Interval beside = window.ask(DeskPicturesTest::ofFigure);
    assertThat(beside.seconds()).isBetween(0.1, 0.4);
    assertThat(beside.contains(middle) && beside.contains(middle + 0.01)).isTrue();
    window.run("showAll");
    assertThat(window.<Interval>ask(DeskPicturesTest::ofFigure))
        .isEqualTo(window.<Interval>ask(DeskPicturesTest::whole));
  }

  @Test
  void aToothPickedInTheFigureOfTheWheelIsPickedInAllViews() {
    show("wheel");
    // from the left to the first tooth of the wheel
    window.on(
        w -> {
          Component c = named(w, "canvas.wheel");
          for (int x = 20;
              x < c.getWidth() / 2 && w.model.selected.get().tooth().isEmpty();
              x += 6) {
            click(c, x, c.getHeight() / 2);
          }
        });
    int tooth = window.ask(w -> w.model.selected.get().tooth().orElseThrow());
    assertThat(window.<String>ask(w -> ((JLabel) named(w, "readout.tooth")).getText()))
        .startsWith(tooth + "  ");
    // under the sensor stands the tooth that was picked
    double degrees =
        window.ask(
            w -> w.model.degreesAt(w.model.selected.get().instant().orElseThrow()).orElseThrow());
    assertThat(degrees).isCloseTo(10.0 * (tooth - 1), within(0.5));
  }

  @Test
  void aSparkPickedOnItsChannelIsPicked() {
    window.run("trace");
    double spark =
        window.ask(
            w ->
                w.model
                    .examination()
                    .orElseThrow()
                    .observations()
                    .coils()
                    .get(0)
                    .sparks()
                    .get(20)
                    .timeSeconds());
    window.on(w -> w.model.show(new Interval(spark - 0.01, spark + 0.01)));
    window.settle();
    window.on(w -> w.frame.getRootPane().paintImmediately(w.frame.getRootPane().getBounds()));
    window.on(
        w -> {
          int x = (int) Math.round(w.trace.xOf(spark));
          for (int y = w.trace.getHeight() - 20; y > 0; y -= 5) {
            if (w.trace
                .channelAt(at(w.trace, x, y))
                .filter(c -> c.name().equals("CH2"))
                .isPresent()) {
              click(w.trace, x + 3, y);
            }
          }
        });
    assertThat(window.<Double>ask(w -> w.model.selected.get().instant().orElseThrow()))
        .isEqualTo(spark);
  }

  @Test
  void theWheelTurnsUnderTheSensorAsItIsDragged() {
    window.on(w -> w.model.selectTooth(20));
    double before = window.ask(DeskPicturesTest::degrees);
    window.on(
        w -> {
          Component c = w.wheel;
          for (int a = 0; a <= 30; a += 5) {
            int x = (int) Math.round(c.getWidth() / 2.0 + 80 * Math.sin(Math.toRadians(a)));
            int y = (int) Math.round(c.getHeight() / 2.0 - 80 * Math.cos(Math.toRadians(a)));
            c.dispatchEvent(
                event(c, a == 0 ? MouseEvent.MOUSE_PRESSED : MouseEvent.MOUSE_DRAGGED, x, y));
          }
        });
    // clockwise, so that what was to the left of the sensor, and passed before, comes back to it
    assertThat(window.<Double>ask(DeskPicturesTest::degrees)).isCloseTo(before - 30, within(1.0));
  }

  @Test
  void capturesAreSeenSideBySideEachWithItsVerdictTraceAndStrip() {
    try (DrivenWindow other = DrivenWindow.onALaptop()) {
      other.open(REFITTED.resolveSibling("../loose-connector/capture.csv.gz"));
      Rectangle screen = new Rectangle(0, 0, 1366, 740);
      JFrame left = window.ask(w -> w.frame);
      window.on(w -> Desk.tile(List.of(left, other.frame()), screen));
      window.settle();
      other.settle();
      assertThat(window.<Rectangle>ask(w -> left.getBounds()))
          .isEqualTo(new Rectangle(0, 0, 683, 740));
      assertThat(window.<Rectangle>ask(w -> other.frame().getBounds()))
          .isEqualTo(new Rectangle(683, 0, 683, 740));
      for (DrivenWindow one : List.of(window, other)) {
        one.run("trace");
        assertThat(one.<Integer>ask(w -> w.trace.isShowing() ? w.trace.getWidth() : 0))
            .isGreaterThan(600);
        assertThat(one.<Boolean>ask(w -> w.strip.isShowing())).isTrue();
        assertThat(one.<Boolean>ask(w -> w.side.isShowing())).isFalse();
      }
      window.run("findings");
      assertThat(window.<Boolean>ask(w -> w.side.isShowing())).isTrue();
      window.on(w -> w.frame.setSize(1366, 740));
      window.settle();
      assertThat(window.<Boolean>ask(w -> w.side.isShowing() && w.wheel.isShowing())).isTrue();
    }
  }

  @Test
  void fiveWindowsCoverTheScreenInTwoRows() {
    Rectangle screen = new Rectangle(10, 20, 1200, 800);
    List<JFrame> frames = window.ask(w -> Stream.generate(JFrame::new).limit(5).toList());
    window.on(w -> Desk.tile(frames, screen));
    assertThat(frames.stream().map(JFrame::getBounds))
        .containsExactly(
            new Rectangle(10, 20, 400, 400),
            new Rectangle(410, 20, 400, 400),
            new Rectangle(810, 20, 400, 400),
            new Rectangle(10, 420, 600, 400),
            new Rectangle(610, 420, 600, 400));
    window.on(w -> frames.forEach(JFrame::dispose));
  }

  @Test
  void whatIsTriedIsDrawnAlongTraceAndStripWhileTheSliderMoves() {
    window.open(REFITTED.resolveSibling("../weak-on-the-starter/capture.csv.gz"));
    window.run("trace");
    window.settle();
    int strip = window.ask(w -> ofText(w.strip));
    int trace = window.ask(w -> ofText(w.trace));
    window.run("whatIf");
    window.on(w -> w.model.whatIf.setting.set(new WhatIf.Setting(WhatIf.Circuit.FIXED, 0, 60)));
    window.settle();
    int few = window.ask(w -> ofText(w.strip));
    int fewInTrace = window.ask(w -> ofText(w.trace));
    // no tooth of this capture is as high as that, so each is lost and has its mark
    window.on(w -> ((JSlider) named(w, "whatIf.guard")).setValue(1000));
    window.settle();
    assertThat(window.<Integer>ask(w -> ofText(w.strip))).isGreaterThan(few);
    assertThat(window.<Integer>ask(w -> ofText(w.trace))).isGreaterThan(fewInTrace);
    window.run("findings");
    assertThat(window.<Integer>ask(w -> ofText(w.strip))).isEqualTo(strip);
    assertThat(window.<Integer>ask(w -> ofText(w.trace))).isEqualTo(trace);
  }

  @Test
  void theWheelKeepsItsRoomWhereTheTypeIsHalfAsLargeAgain() {
    window.close();
    try {
      enlarge(1.5);
      window = DrivenWindow.show(new Dimension(1366, 768));
      window.open(REFITTED.resolveSibling("../loose-connector/capture.csv.gz"));
      window.run("nextEvent");
      window.settle();
      // as high as at least two thirds of its column is wide
      assertThat(window.<Integer>ask(w -> w.wheel.getHeight()))
          .isGreaterThan(window.<Integer>ask(w -> w.wheel.getWidth()) * 2 / 3);
    } finally {
      enlarge(1);
    }
  }

  private void enlarge(double times) {
    window.on(
        w -> {
          Look.enlarge(times);
          Look.wear(Ink.LIGHT);
        });
  }

  /** How many points of a picture have the colour of text, which what is tried is drawn in. */
  private static int ofText(JComponent picture) {
    BufferedImage image =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
    picture.paint(image.createGraphics());
    int text = Look.ink().text().getRGB();
    return (int)
        IntStream.of(
                image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth()))
            .filter(p -> p == text)
            .count();
  }

  private static double degrees(DeskWindow w) {
    return w.model.degreesAt(w.model.selected.get().instant().orElseThrow()).orElseThrow();
  }

  private static Interval shown(DeskWindow w) {
    return w.model.view.get().orElseThrow().shown();
  }

  private static Interval whole(DeskWindow w) {
    return w.model.view.get().orElseThrow().whole();
  }

  private static Interval ofFigure(DeskWindow w) {
    return new Interval(across(w).getLowerBound(), across(w).getUpperBound());
  }

  private static void wheel(Component c, int turns) {
    c.dispatchEvent(
        new MouseWheelEvent(
            c,
            MouseEvent.MOUSE_WHEEL,
            1,
            0,
            c.getWidth() / 2,
            c.getHeight() / 2,
            0,
            false,
            0,
            3,
            turns));
  }

  private static void click(Component c, int x, int y) {
    c.dispatchEvent(event(c, MouseEvent.MOUSE_PRESSED, x, y));
    c.dispatchEvent(event(c, MouseEvent.MOUSE_RELEASED, x, y));
  }

  private static MouseEvent at(Component c, int x, int y) {
    return event(c, MouseEvent.MOUSE_MOVED, x, y);
  }

  private static MouseEvent event(Component c, int id, int x, int y) {
    return new MouseEvent(
        c, id, 1, InputEvent.BUTTON1_DOWN_MASK, x, y, 1, false, MouseEvent.BUTTON1);
  }

  private void show(String picture) {
    window.on(w -> w.pictures.show(picture));
    window.settle();
  }

  private static Figure figure(DeskWindow w) {
    return w.pictures.current().orElseThrow().getValue().figure().orElseThrow();
  }

  private static ValueAxis across(DeskWindow w) {
    return ((XYPlot) figure(w).chart().getPlot()).getDomainAxis();
  }

  private static Component named(DeskWindow w, String name) {
    return DrivenWindow.named(w.frame.getContentPane(), name);
  }
}
