package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import toothmark.chart.Ink;

/** Compares in the real window; skipped where there is no display. */
class CompareTest {

  private static final Path SAMPLES = Path.of("../signal-samples");

  @Test
  void anEarlierCaptureIsLaidOverWhatIsOpen() throws Exception {
    Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "there is no display");
    javax.swing.SwingUtilities.invokeAndWait(() -> Look.wear(Ink.LIGHT));
    try (DrivenWindow window = DrivenWindow.show(new Dimension(1366, 768))) {
      window.open(SAMPLES.resolve("refitted-wheel/capture.csv.gz"));
      window.on(
          w -> w.model.bench.compare(Request.of(SAMPLES.resolve("leads-swapped/capture.csv.gz"))));
      window.settle();
      assertThat(window.<String>ask(w -> w.comparison().orElseThrow().verdict()))
          .isEqualTo("One fault gone, 2 faults new.");
      for (String figure : new String[] {"turn", "spacing", "speed", "gap"}) {
        assertThat(window.<Boolean>ask(w -> view(w, figure).figure().isPresent())).isTrue();
      }
      assertThat(window.<String>ask(w -> w.comparison().orElseThrow().frame.getTitle()))
          .isEqualTo(
              "leads-swapped/capture.csv.gz against refitted-wheel/capture.csv.gz – Toothmark");
      window.on(w -> w.comparison().orElseThrow().frame.dispose());

      window.on(w -> w.model.bench.compare(Request.of(SAMPLES.resolve("README.md"))));
      window.settle();
      assertThat(window.<Boolean>ask(w -> w.model.bench.complaint.get().isPresent())).isTrue();
      assertThat(window.<Boolean>ask(w -> w.model.examination().isPresent())).isTrue();
    }
  }

  private static FigureView view(DeskWindow w, String figure) {
    return (FigureView)
        DrivenWindow.named(
            w.comparison().orElseThrow().frame.getContentPane(), "figure.compare." + figure);
  }
}
