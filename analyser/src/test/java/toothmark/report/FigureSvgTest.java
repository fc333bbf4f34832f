package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Font;
import java.awt.GradientPaint;
import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.chart.Ink;
import toothmark.chart.SampleRun;
import toothmark.findings.Picture;

class FigureSvgTest {

  @ParameterizedTest
  @EnumSource(Picture.class)
  void isWellFormedSmallAndTheSameEachTime(Picture picture) throws Exception {
    Figures figures = Figures.of(SampleRun.full(), Ink.LIGHT);
    String svg = FigureSvg.of(figures.draw(picture).orElseThrow(), "p1-");
    assertThat(svg.getBytes(StandardCharsets.UTF_8).length).isLessThan(150_000);
    assertThat(svg).isEqualTo(FigureSvg.of(figures.draw(picture).orElseThrow(), "p1-"));
    assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity");
    Document document = parse(svg);
    assertThat(document.getElementsByTagName("text").getLength()).isPositive();
  }

  @ParameterizedTest
  @EnumSource(Picture.class)
  void keepsIdsOfOnePageApart(Picture picture) throws Exception {
    Figure figure = Figures.of(SampleRun.full(), Ink.LIGHT).draw(picture).orElseThrow();
    Document document = parse(FigureSvg.of(figure, "p7-"));
    var clips = document.getElementsByTagName("clipPath");
    for (int i = 0; i < clips.getLength(); i++) {
      assertThat(clips.item(i).getAttributes().getNamedItem("id").getNodeValue())
          .isEqualTo("p7-clip-" + i);
    }
  }

  @Test
  void writesShapesTextClipsAndTurns() {
    SvgGraphics g = new SvgGraphics("a-");
    g.setPaint(new Color(0x0072B2));
    g.fill(new Rectangle2D.Double(1, 2, 3, 4.25));
    g.clip(new Rectangle2D.Double(0, 0, 10, 10));
    g.drawLine(1, 1, 5, 5);
    g.setClip(null);
    g.setFont(new Font(Font.DIALOG, Font.PLAIN, 11));
    g.drawString("<x>", 3, 4);
    g.rotate(-Math.PI / 2, 5, 5);
    g.drawString("up", 5, 5);
    assertThat(g.markup())
        .isEqualTo(
            "<path fill=\"#0072b2\" d=\"M1 2L4 2L4 6.3L1 6.3L1 2z\"/>\n"
                + "<clipPath id=\"a-clip-0\"><path d=\"M0 0L10 0L10 10L0 10L0 0z\"/></clipPath>\n"
                + "<g clip-path=\"url(#a-clip-0)\">\n"
                + "<path fill=\"none\" stroke=\"#0072b2\" stroke-width=\"1\" d=\"M1 1L5 5\"/>\n"
                + "</g>\n"
                + "<text x=\"3\" y=\"4\" font-family=\"Dialog\" font-size=\"11\""
                + " fill=\"#0072b2\">&lt;x&gt;</text>\n"
                + "<text transform=\"matrix(0.0000 -1.0000 1.0000 0.0000 5.0 5.0)\""
                + " font-family=\"Dialog\" font-size=\"11\" fill=\"#0072b2\">up</text>\n");
  }

  @Test
  void refusesWhatItCannotWrite() {
    SvgGraphics g = new SvgGraphics("");
    g.setPaint(new GradientPaint(0, 0, Color.RED, 1, 1, Color.BLUE));
    assertThatThrownBy(() -> g.fill(new Rectangle2D.Double(0, 0, 1, 1)))
        .isInstanceOf(UnsupportedOperationException.class)
        .hasMessage("a chart in a report needs no paint but opaque colours");
  }

  private static Document parse(String xml) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(xml)));
  }
}
