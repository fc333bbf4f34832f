package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.nio.file.Path;
import javax.swing.JComboBox;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import toothmark.chart.Figure;

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
