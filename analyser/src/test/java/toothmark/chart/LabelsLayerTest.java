package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;

class LabelsLayerTest {

  private static final Rectangle2D AREA = new Rectangle2D.Double(0, 0, 400, 200);

  /** Steeper than words are long, so that a place right beside the line is not clear of it. */
  private final Points line = new Points();

  private final Frame frame = frame();

  LabelsLayerTest() {
    for (int i = 0; i <= 400; i++) {
      line.add(i, i / 2.0);
    }
  }

  private static Frame frame() {
    NumberAxis x = new NumberAxis();
    x.setRange(0, 400);
    NumberAxis y = new NumberAxis();
    y.setRange(0, 200);
    return new Frame(AREA, x, y, new XYPlot(null, x, y, null));
  }

  private static Label label(double x, String text, Place place) {
    return new Label(x, x / 2, text, place, Color.BLACK);
  }

  private Map<Label, Rectangle2D> boxes(List<Points> clear, Label... labels) {
    FontMetrics metrics =
        new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB)
            .createGraphics()
            .getFontMetrics(Lettering.regular(11));
    return new LabelsLayer(List.of(labels), Lettering.regular(11), Color.WHITE, clear)
        .boxes(metrics, frame).stream()
            .collect(Collectors.toMap(LabelsLayer.Written::label, LabelsLayer.Written::box));
  }

  private boolean hidesTheLine(Rectangle2D box) {
    for (int i = 0; i < line.size(); i++) {
      if (box.contains(frame.x(line.x(i)), frame.y(line.y(i)))) {
        return true;
      }
    }
    return false;
  }

  @Test
  void wordsKeepClearOfWhatMustBeSeenAsNearAsCanBe() {
    for (Place place : List.of(Place.ABOVE, Place.BELOW)) {
      Label name = label(200, "actual advance", place);
      assertThat(hidesTheLine(boxes(List.of(), name).get(name))).isTrue();
      Rectangle2D box = boxes(List.of(line), name).get(name);
      assertThat(hidesTheLine(box)).isFalse();
      assertThat(place == Place.ABOVE).isEqualTo(box.getMaxY() < 100);
      assertThat(Math.abs(box.getCenterY() - 100)).isLessThan(40);
    }
  }

  @Test
  void besideAPointWordsGoToItsOtherSideWhereOneIsTaken() {
    Label first = label(260, "sync lost", Place.RIGHT);
    Label second = new Label(230, 130, "40 teeth missing", Place.RIGHT, Color.BLACK);
    Map<Label, Rectangle2D> boxes = boxes(List.of(), first, second);
    assertThat(boxes).containsOnlyKeys(first, second);
    assertThat(boxes.get(second).getMaxX()).isLessThan(230);
  }

  @Test
  void whereNothingIsClearWordsStayAtTheirPlaceAndNoneCoversAnother() {
    Points everywhere = new Points();
    for (int i = 0; i < 400 * 40; i++) {
      everywhere.add(i % 400, 5 * (i / 400));
    }
    Label first = label(200, "actual", Place.ABOVE);
    Label second = label(205, "commanded", Place.ABOVE);
    Map<Label, Rectangle2D> boxes = boxes(List.of(everywhere), first, second);
    assertThat(boxes).containsOnlyKeys(first);
    assertThat(boxes.get(first)).isEqualTo(boxes(List.of(), first).get(first));
    assertThat(boxes(List.of(), first, second)).isEqualTo(boxes);
  }
}
