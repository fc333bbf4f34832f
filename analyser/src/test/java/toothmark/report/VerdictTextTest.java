package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import toothmark.chart.SampleRun;

class VerdictTextTest {

  @Test
  void fitsOneScreenWithTheVerdictFirst() {
    List<Path> written = List.of(Path.of("out/report.html"), Path.of("out/teeth.csv"));
    List<String> lines =
        VerdictText.of(SampleRun.full(), written, 80).stream()
            .map(VerdictText.Line::plain)
            .toList();
    assertThat(lines)
        .containsExactly(
            "Tooth 11 is bent and sync is lost at tooth 12. The wheel also stands 2.6° late.",
            "Next: Look at tooth 11 of the wheel with the engine stopped and the battery off.",
            "",
            "FAULT        Tooth 11 passes 0.80° late on every turn.",
            "WATCH        Tooth 11 passes 0.80° late on every turn.",
            "FAULT        Tooth 11 passes 0.80° late on every turn.",
            "NOTE         Tooth 11 passes 0.80° late on every turn.",
            "",
            "wheel        36-1, more than 99 % sure",
            "speed        986 to 5119 rev/min, mean 2990",
            "teeth        6 956 seen, 9 missing, 9 stray",
            "sync losses  9 (0 cranking, 9 running)",
            "tooth 1      87.402 ± 0.041° BTDC, error −2.598 ± 0.041°, −3.401 ± 0.053 mm at",
            "             the sensor, by a mark channel in the capture",
            "advance      offset −2.604 ± 0.061°, delay 100.3 ± 3.7 µs",
            "coil 1       193 sparks, 4 absent, dwell 2.71 ms",
            "coil 2       193 sparks, 4 absent, dwell 2.71 ms",
            "",
            "report       out/report.html",
            "data         out (1 file)");
  }

  @Test
  void givesEachLineItsRole() {
    List<VerdictText.Line> lines = VerdictText.of(SampleRun.full(), List.of(), 80);
    assertThat(lines.get(0).role()).isEqualTo(VerdictText.Role.VERDICT);
    assertThat(lines.get(3).role()).isEqualTo(VerdictText.Role.FAULT);
    assertThat(lines.get(4).role()).isEqualTo(VerdictText.Role.WATCH);
  }

  @Test
  void saysWhatAnAdvanceIsCountedFromWhereThereIsNoMark() {
    assertThat(VerdictText.of(SampleRun.withoutTdc(), List.of(), 200))
        .extracting(VerdictText.Line::plain)
        .contains(
            "NOTE         The wheel's own angle was not checked.",
            "advance      offset −2.604 ± 0.061°, delay 100.3 ± 3.7 µs, against the setting that the"
                + " controller is told, not against top dead centre")
        .noneMatch(s -> s.startsWith("tooth 1"));
  }

  @Test
  void saysLittleWhereLittleIsKnown() {
    assertThat(VerdictText.of(SampleRun.undecodable(), List.of(), 80))
        .extracting(VerdictText.Line::plain)
        .containsExactly("There is no crank signal.", "", "sync losses  none");
  }
}
