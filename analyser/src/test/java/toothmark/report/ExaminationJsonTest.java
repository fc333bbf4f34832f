package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import toothmark.chart.SampleRun;
import toothmark.examination.Examination;

class ExaminationJsonTest {

  @Test
  void holdsEveryFieldOfTheSchemaWithItsUnit() throws IOException {
    String json = json(SampleRun.full());
    assertThat(json)
        .startsWith("{\n  \"schema\": \"toothmark.examination/1\",\n")
        .contains("\"file\": \"rev-up.csv\"", "\"duration_s\": 4,", "\"sample_rate_hz\": 50000,")
        .contains("\"name\": \"CH4\",\n      \"role\": \"tdc\",\n      \"unit\": \"\"")
        .contains("\"pattern\": \"36-1\",\n    \"confidence\": 0.993,")
        .contains("\"kind\": \"variable-reluctance\",\n    \"polarity\": \"normal\"")
        .contains("\"mean_rpm\": 2990,")
        .contains("\"losses\": 9,\n    \"cranking\": 0,\n    \"running\": 9")
        .contains("\"nominal\": 90,\n      \"measured\": {\n        \"value\": 87.402,")
        .contains(
            "\"error_deg\": {\n      \"value\": -2.598,\n      \"standard_uncertainty\": 0.021")
        .contains("\"sensor_move_mm\": {\n      \"value\": -3.401,")
        .contains("\"delay_us\": {\n      \"value\": 100.3,\n      \"standard_uncertainty\": 1.9")
        .contains("\"rpm\": 2510,\n      \"sparks\": 110,\n      \"actual_deg\": 12.2,")
        .contains("\"gap_deg\": -4.1,\n      \"gap_standard_deviation_deg\": null")
        .contains("\"dwell_ms\": {\n      \"mean\": 2.71,\n      \"standard_deviation\": 0.11")
        .contains("\"id\": \"damaged-tooth\",\n    \"severity\": \"fault\",")
        .contains("\"next_test\": \"Turn the engine by hand and look at tooth 11.\"")
        .endsWith("}\n");
  }

  @Test
  void saysNullForWhatTheCaptureCannotTell() throws IOException {
    assertThat(json(SampleRun.undecodable()))
        .contains("\"wheel\": null,", "\"polarity\": null", "\"speed\": null,", "\"teeth\": null,")
        .contains("\"nominal\": null,\n      \"measured\": null", "\"error_deg\": null,")
        .contains("\"offset_deg\": null,", "\"delay_us\": null,", "\"coils\": [ ]");
  }

  private static String json(Examination e) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ExaminationJson.write(e, out);
    return out.toString(StandardCharsets.UTF_8);
  }
}
