package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.junit.jupiter.api.Test;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Picture;
import toothmark.rotation.AngleTimeline;
import toothmark.timing.SparkTiming;
import toothmark.units.Interval;

class LinksTest {

  private static final Picked NOTHING =
      new Picked(Optional.empty(), OptionalInt.empty(), OptionalDouble.empty(), Optional.empty());

  private final Examination run = SampleRun.full();
  private final Figures figures = Figures.of(run, Ink.LIGHT);
  private final ChartRenderingInfo info = new ChartRenderingInfo(null);

  @Test
  void aSparkIsPickedAtItsPointInTheAdvanceAndRingedThere() {
    Figure figure = figures.draw(Picture.ADVANCE).orElseThrow();
    BufferedImage plain = drawn(figure);
    SparkTiming spark =
        run.observations().timing().sparks().stream()
            .filter(s -> s.spark().crank().isPresent() && s.gapDegrees().isPresent())
            .skip(100)
            .findFirst()
            .orElseThrow();
    double t = spark.spark().timeSeconds();
    CombinedDomainXYPlot stack = (CombinedDomainXYPlot) figure.chart().getPlot();
    Rectangle2D area = info.getPlotInfo().getSubplotInfo(1).getDataArea();
    Point2D place =
        place(
            stack.getDomainAxis(),
            ((XYPlot) ((List<?>) stack.getSubplots()).get(1)).getRangeAxis(),
            area,
            spark.spark().crank().orElseThrow().rpm(),
            spark.gapDegrees().orElseThrow());
    // others are as near as a pixel, at nearly the same speed
    double picked = at(figure, place, NOTHING).orElseThrow().instant().orElseThrow();
    assertThat(picked).isCloseTo(t, within(0.05));
    assertThat(at(figure, new Point2D.Double(area.getCenterX(), area.getMinY() + 1), NOTHING))
        .isEmpty();
    BufferedImage marked = drawn(figure);
    mark(figure, marked, Picked.instant(t));
    assertThat(changed(plain, marked, place, 9)).isPositive();
    assertThat(changed(plain, marked, new Point2D.Double(place.getX() - 60, place.getY()), 9))
        .isZero();
  }

  @Test
  void theSpanLookedAtIsShadedOverTimeAndAPlaceOfItIsAnInstant() {
    Figure figure = figures.draw(Picture.SPEED).orElseThrow();
    BufferedImage plain = drawn(figure);
    BufferedImage marked = drawn(figure);
    Interval span = new Interval(1, 2);
    mark(
        figure,
        marked,
        new Picked(
            Optional.empty(), OptionalInt.empty(), OptionalDouble.empty(), Optional.of(span)));
    ValueAxis axis = figure.timeAxis().orElseThrow();
    Rectangle2D area = info.getPlotInfo().getDataArea();
    for (double t = 0.25; t < 3.5; t += 0.5) {
      Point2D place =
          new Point2D.Double(
              axis.valueToJava2D(t, area, RectangleEdge.BOTTOM), area.getMaxY() - 12);
      assertThat(changed(plain, marked, place, 3) > 0).as(t + " s").isEqualTo(span.contains(t));
      assertThat(at(figure, place, NOTHING).orElseThrow().instant().orElseThrow())
          .isCloseTo(t, within(1e-6));
    }
  }

  @Test
  void aPlaceInTheTurnsIsAnInstantOfTheTurnPickedOut() {
    Figure figure = figures.turns(run.roles().crank(), Fold.TURN, () -> false).orElseThrow();
    drawn(figure);
    AngleTimeline angle = run.observations().crank().orElseThrow().angle();
    XYPlot plot = (XYPlot) figure.chart().getPlot();
    // a signal of 0 is passed by all turns where a tooth's centre is: 40 degrees after tooth 1
    Point2D place =
        place(
            plot.getDomainAxis(), plot.getRangeAxis(), info.getPlotInfo().getDataArea(), 40.0, 0.0);
    double now = 2.5;
    double picked = at(figure, place, Picked.instant(now)).orElseThrow().instant().orElseThrow();
    assertThat(angle.degreesAt(picked) % 360).isCloseTo(40, within(0.6));
    assertThat(Math.floor(angle.degreesAt(picked) / 360))
        .isEqualTo(Math.floor(angle.degreesAt(now) / 360));
  }

  @Test
  void aToothIsPickedOnTheWheelAndBesideIt() {
    Figure figure = figures.draw(Picture.WHEEL).orElseThrow();
    BufferedImage plain = drawn(figure);
    WheelPlot wheel = (WheelPlot) figure.chart().getPlot();
    BufferedImage marked = drawn(figure);
    mark(figure, marked, Picked.tooth(11));
    int found = 0;
    for (int x = 2; x < Figure.WIDTH; x += 3) {
      for (int y = 2; y < figure.height(); y += 3) {
        Point2D place = new Point2D.Double(x, y);
        boolean eleven = wheel.at(place).filter(p -> p.tooth().getAsInt() == 11).isPresent();
        found += eleven && changed(plain, marked, place, 1) > 0 ? 1 : 0;
      }
    }
    assertThat(found).isGreaterThan(10);
    assertThat(changed(plain, marked, new Point2D.Double(180, 180), 20)).isZero();
  }

  @Test
  void anInstantIsPointedAtOnTheWheelAndAFindingBarredOverTime() {
    Figure wheel = figures.draw(Picture.WHEEL).orElseThrow();
    BufferedImage plain = drawn(wheel);
    BufferedImage marked = drawn(wheel);
    mark(wheel, marked, Picked.instant(2));
    assertThat(changed(plain, marked, new Point2D.Double(180, 180), 150)).isGreaterThan(20);
    Finding finding =
        run.diagnosis().findings().stream()
            .filter(f -> !f.where().isEmpty())
            .findFirst()
            .orElseThrow();
    Figure speed = figures.draw(Picture.SPEED).orElseThrow();
    plain = drawn(speed);
    marked = drawn(speed);
    mark(
        speed,
        marked,
        new Picked(
            Optional.of(finding), OptionalInt.empty(), OptionalDouble.empty(), Optional.empty()));
    Rectangle2D area = info.getPlotInfo().getDataArea();
    double x =
        speed
            .timeAxis()
            .orElseThrow()
            .valueToJava2D(finding.where().get(0).startInclusive(), area, RectangleEdge.BOTTOM);
    assertThat(changed(plain, marked, new Point2D.Double(x + 1, area.getMinY() + 2), 2))
        .isPositive();
    assertThat(changed(plain, marked, new Point2D.Double(x + 1, area.getMaxY() - 9), 2)).isZero();
  }

  private BufferedImage drawn(Figure figure) {
    BufferedImage image =
        new BufferedImage(Figure.WIDTH, figure.height(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    figure.chart().draw(g, new Rectangle2D.Double(0, 0, Figure.WIDTH, figure.height()), null, info);
    g.dispose();
    return image;
  }

  private void mark(Figure figure, BufferedImage image, Picked picked) {
    Graphics2D g = image.createGraphics();
    figure.mark(g, info.getPlotInfo(), picked, Ink.LIGHT);
    g.dispose();
  }

  private Optional<Picked> at(Figure figure, Point2D place, Picked picked) {
    return figure.at(place, info.getPlotInfo(), picked);
  }

  private static Point2D place(
      ValueAxis across, ValueAxis up, Rectangle2D area, double x, double y) {
    return new Point2D.Double(
        across.valueToJava2D(x, area, RectangleEdge.BOTTOM),
        up.valueToJava2D(y, area, RectangleEdge.LEFT));
  }

  /** How many pixels around a place differ. */
  private static int changed(BufferedImage a, BufferedImage b, Point2D about, int reach) {
    int n = 0;
    for (int x = (int) about.getX() - reach; x <= about.getX() + reach; x++) {
      for (int y = (int) about.getY() - reach; y <= about.getY() + reach; y++) {
        n += a.getRGB(x, y) == b.getRGB(x, y) ? 0 : 1;
      }
    }
    return n;
  }
}
