package toothmark.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CaptureReaderTest {

  @TempDir Path folder;

  private Capture read(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("capture.csv"), text);
    return CaptureReader.read(file, ReadingOptions.withDefaults());
  }

  @Test
  void commaAndPoint() throws Exception {
    Capture c = read("Time (s),CH1 (V)\n0.000,1.5\n0.001,-2.5\n0.002,3\n");
    SampledSignal s = (SampledSignal) c.channel("CH1").orElseThrow().signal();
    double[] v = new double[3];
    s.read(0, v, 3);
    assertThat(v).containsExactly(1.5, -2.5, 3);
    assertThat(s.intervalSeconds()).isEqualTo(0.001);
  }

  @Test
  void emptyFile() {
    assertThatThrownBy(() -> read(""))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("capture.csv: the file is empty; record the capture again");
  }
}
