package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.chart.Ink;
import toothmark.examination.JobSheet;

class AidsTest {

  @BeforeAll
  static void dress() throws Exception {
    SwingUtilities.invokeAndWait(() -> Look.wear(Ink.LIGHT));
  }

  /** Touches at 21 before and 15 after: 18 each side of a top that the mark shows 3 degrees off. */
  @Test
  void aPistonStopSaysWhatTheMarksAreOff() {
    Aid.Outcome outcome = work("piston", Map.of(), List.of(List.of("21", "15"))).orElseThrow();
    assertThat(outcome.sentences().get(0))
        .isEqualTo(
            "At true top dead centre the pointer reads 3.00\u00a0±\u00a00.69° before TDC (95 %, 1"
                + " pair of touches).");
    assertThat(inkOf(outcome)).isPositive();
  }

  /** Readings made from an offset of -2 degrees and a delay of 100 us: 0.6 degrees a 1000 rpm. */
  @Test
  void aTimingLightIsPartedIntoOffsetAndDelay() {
    Aid.Outcome outcome =
        work(
                "strobe",
                Map.of(),
                List.of(
                    List.of("1000", "10", "7,4"),
                    List.of("2000", "20", "16.8"),
                    List.of("", " ", ""),
                    List.of("4000", "30", "25.6")))
            .orElseThrow();
    assertThat(outcome.sentences().get(0)).startsWith("Offset \u22122.0\u00a0±");
    assertThat(outcome.sentences().get(1)).startsWith("Delay 100\u00a0±");
    assertThat(inkOf(outcome)).isPositive();
  }

  /** 150.2 mm around: pi times the diameter over 360 is 1.311 mm a degree, 80 degrees 104.9 mm. */
  @Test
  void aTapeIsAsLongAsTheArcAndCanBePrinted() throws Exception {
    Aid.Outcome outcome = work("tape", Map.of("diameter", "150"), List.of()).orElseThrow();
    assertThat(outcome.sentences().get(0))
        .isEqualTo("The tape is 104.9 mm long, 1.311 mm for each degree.");
    assertThat(new String(outcome.file().orElseThrow().bytes(), 0, 5, "US-ASCII"))
        .isEqualTo("%PDF-");
    assertThat(inkOf(outcome)).isPositive();
  }

  /**
   * 36-1 with tooth 1 at 90: a spark at 40 before TDC comes 50 degrees after tooth 1, on tooth 6; 3
   * ms at 6500 rev/min are 117 degrees.
   */
  @Test
  void aPlanNamesTheTeethBeforeChargeAndSpark() {
    Aid.Outcome outcome = work("firing", Map.of(), List.of()).orElseThrow();
    assertThat(String.join("\n", outcome.sentences()))
        .contains("Charging takes 117° of the 360°")
        .contains("Cylinder 1: charge 3.00° after tooth 30, spark 0.00° after tooth 6");
    assertThat(inkOf(outcome)).isPositive();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "tape   | diameter | 15O   | Diameter of the pulley, mm: \"15O\" is no number",
        "tape   | to       |       | Highest degree before TDC: type a number",
        "tape   | paper    | A0    | \"A0\" is no paper that is known; type A4 or letter",
        "firing | dwell    | -3    | the least advance comes before the most; dwell, speeds and coil"
            + " angle must be positive",
      })
  void whatIsWrongIsSaidInWords(String aid, String field, String text, String message) {
    Map<String, String> typed = new HashMap<>(Map.of("diameter", "150"));
    typed.put(field, text == null ? "" : text);
    assertThatThrownBy(() -> work(aid, typed, List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }

  @Test
  void nothingTypedIsNothingWrong() {
    for (String aid : List.of("piston", "strobe", "tape")) {
      assertThat(work(aid, Map.of(), List.of())).isEmpty();
    }
  }

  private static Optional<Aid.Outcome> work(
      String name, Map<String, String> typed, List<List<String>> rows) {
    Aid aid =
        Aids.all(JobSheet.empty()).stream().filter(a -> a.name().equals(name)).findFirst().get();
    Map<String, String> fields = new HashMap<>();
    aid.entries().forEach(e -> fields.put(e.key(), e.first()));
    fields.putAll(typed);
    return aid.work(new Typed(fields, rows));
  }

  /** How many pixels of its picture are not blank. */
  private static long inkOf(Aid.Outcome outcome) {
    BufferedImage image = new BufferedImage(600, 400, BufferedImage.TYPE_INT_ARGB);
    var g = image.createGraphics();
    outcome.picture().draw(g, new java.awt.geom.Rectangle2D.Double(0, 0, 600, 400));
    g.dispose();
    return Arrays.stream(image.getRGB(0, 0, 600, 400, null, 0, 600)).filter(p -> p != 0).count();
  }
}
