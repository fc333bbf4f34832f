package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChannelsCommandTest {

  private static final double SAMPLES_A_TOOTH = 40;
  private static final int SLOTS = 36;

  @TempDir private Path temp;

  @Test
  void saysWhatIsThereAndWhatItIsGoodFor() throws IOException {
    CommandRun run = CommandRun.of("channels", switchedWheel(8));

    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out())
        .startsWith("hall.csv: delimited text, comma")
        .contains("CH1          taken for crank, 100 kHz, 11 520 samples, −0.020 to 5.020 V")
        .contains("wheel        36-1, 416")
        .contains("long         7.9 turns, enough")
        .contains("read as      header: 1 line above the rows, from line 1")
        .containsPattern("[\\u2801-\\u28ff]{10}");
  }

  @Test
  void aCaptureWithoutTeethIsStillShown() throws IOException {
    StringBuilder flat = new StringBuilder("time (s),CH1 (V)\n");
    for (int i = 0; i < 2000; i++) {
      flat.append(String.format(Locale.ROOT, "%.5f,0.00%n", i * 1e-5));
    }
    CommandRun run = CommandRun.of("channels", Files.writeString(temp.resolve("a.csv"), flat));
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("100 kHz, 2 000 samples").contains("fit for");
  }

  /** A 36-1 wheel before a switch, at 100 kHz: 40 samples a slot are 4167 rev/min. */
  private Path switchedWheel(int turns) throws IOException {
    StringBuilder text = new StringBuilder("time (s),CH1 (V)\n");
    for (int i = 0; i < turns * SLOTS * SAMPLES_A_TOOTH; i++) {
      int slot = (int) (i / SAMPLES_A_TOOTH) % SLOTS;
      boolean tooth = i % SAMPLES_A_TOOTH < SAMPLES_A_TOOTH / 2 && slot != SLOTS - 1;
      double ripple = 0.02 * Math.sin(i * 1.7);
      text.append(
          String.format(Locale.ROOT, "%.5f,%.3f%n", i * 1e-5, (tooth ? 5.0 : 0.0) + ripple));
    }
    return Files.writeString(temp.resolve("hall.csv"), text);
  }
}
