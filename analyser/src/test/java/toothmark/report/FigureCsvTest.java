package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.chart.Ink;
import toothmark.chart.SampleRun;
import toothmark.findings.Picture;

class FigureCsvTest {

  private final Figures figures = Figures.of(SampleRun.full(), Ink.LIGHT);

  /** The sample's tooth 11 is made to pass 0.8 degrees late. */
  @Test
  void thePlacesOfTheTeethStandInTheTable() {
    List<String> lines = lines(figures.draw(Picture.WHEEL).orElseThrow());
    assertThat(lines.get(0)).isEqualTo("x_axis,y_axis,series,x,y");
    assertThat(lines)
        .anyMatch(l -> l.matches("tooth,late \\(°\\),stems \\d+,11\\.0+,0\\.(79|80)\\d+"));
  }

  @Test
  void everySparkStandsInTheTableOfTheGap() {
    List<String> lines = lines(figures.draw(Picture.ADVANCE).orElseThrow());
    assertThat(lines)
        .anyMatch(l -> l.startsWith("speed (rev/min),gap: actual − commanded (°),points"))
        .anyMatch(l -> l.startsWith("speed (rev/min),gap: actual − commanded (°),lower"));
  }

  private static List<String> lines(Figure figure) {
    return new String(FigureCsv.of(figure), StandardCharsets.UTF_8).lines().toList();
  }
}
