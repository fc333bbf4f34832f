package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.Capture;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.source.ByteSource;
import toothmark.capture.text.TextCapture.Division;

/**
 * Whole files against the plainest of readers: lines split at commas, numbers by {@link
 * Double#parseDouble}. Every sample must have the same bits.
 */
class PlainReaderTest {

  private static final int ROWS = 30_000;
  private static final List<String> FORMATS = List.of("%.3f", "%.8e", "%.0f", "%+.12f", "%.17e");

  @TempDir Path folder;

  private static String text(Random random) {
    int[] formats = {random.nextInt(FORMATS.size()), random.nextInt(FORMATS.size())};
    StringBuilder b = new StringBuilder("time (s),A,B\n");
    for (int i = 0; i < ROWS; i++) {
      b.append(String.format(Locale.ROOT, "%.6f", i * 1e-5));
      for (int f : formats) {
        double value = random.nextGaussian() * Math.pow(10, random.nextInt(9) - 4);
        // Now and then a number in another form than those above it.
        String format = random.nextInt(200) == 0 ? "%s" : FORMATS.get(f);
        b.append(',').append(String.format(Locale.ROOT, format, value));
      }
      b.append(random.nextInt(100) == 0 ? "\r\n" : "\n");
    }
    return b.toString();
  }

  private static double[] plain(String text, int column) {
    return text.lines()
        .skip(1)
        .mapToDouble(line -> Double.parseDouble(line.split(",")[column]) + 0.0)
        .toArray();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void sameBits(int seed) throws Exception {
    Random random = new Random(seed);
    String text = text(random);
    Path file = Files.writeString(folder.resolve("a.csv"), text);
    ReadingOptions options = ReadingOptions.withDefaults();
    Division division = new Division(1 + seed % 2, 1000 + random.nextInt(1 << 19), 1 << 18);
    try (ByteSource source = ByteSource.open(file, options);
        Capture capture = TextCapture.read(source, options, division)) {
      for (int c = 0; c < 2; c++) {
        SampledSignal signal = (SampledSignal) capture.channels().get(c).signal();
        double[] read = new double[ROWS];
        signal.read(0, read, ROWS);
        assertThat(signal.size()).isEqualTo(ROWS);
        assertThat(read).isEqualTo(plain(text, c + 1));
      }
    }
  }
}
