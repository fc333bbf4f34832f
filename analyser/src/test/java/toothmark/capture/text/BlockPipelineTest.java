package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.Capture;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;
import toothmark.capture.ReadingProgress;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.source.ByteSource;
import toothmark.capture.text.TextCapture.Division;

/** The outcome must not depend on how the text is cut, on threads, or on where samples are kept. */
class BlockPipelineTest {

  @TempDir Path folder;

  private String read(Path file, Division division) throws Exception {
    ReadingOptions options = ReadingOptions.withDefaults();
    try (ByteSource source = ByteSource.open(file, options);
        Capture capture = TextCapture.read(source, options, division)) {
      StringBuilder b = new StringBuilder(CaptureText.describe(capture));
      capture.reading().facts().forEach(f -> b.append(f).append('\n'));
      return b.toString();
    } catch (UnreadableCaptureException e) {
      return e.getMessage();
    }
  }

  private static String small(String lineEnd) {
    return String.join(
        lineEnd,
        "# Interval,0.1,ms",
        "Time (ms);A (V);B (mV)",
        "-0,2;1,5;250",
        "-0,1;\"2,25\";-1.250,5",
        "",
        "0,0;inf;",
        "# remark",
        "0,1;-1e-2;7",
        "0,2;3;NaN",
        "7,0;4;1",
        "7,1;5;2",
        "7,2;6",
        "7,3;7;3");
  }

  /** Block sizes from one byte to the whole file put a cut at every byte. */
  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void cutAtEveryByte(String lineEnd) throws Exception {
    Path file = Files.writeString(folder.resolve("a.csv"), small(lineEnd));
    String whole = read(file, new Division(1, 1 << 16, 1 << 20));
    assertThat(whole).contains("A in V: every 1.0E-4 s from -2.0E-4 s: 1.5 2.25 7.0 -0.01 3.0 | ");
    for (int bytes = 1; bytes < small(lineEnd).length(); bytes++) {
      assertThat(read(file, new Division(1, bytes, 1 << 20))).as(bytes + " bytes").isEqualTo(whole);
      assertThat(read(file, new Division(2, bytes, 0))).as(bytes + " bytes, 2").isEqualTo(whole);
    }
  }

  private Path large() throws Exception {
    StringBuilder b = new StringBuilder("time,crank,coil\n");
    Random random = new Random(11);
    for (int i = 0; i < 40_000; i++) {
      double scale = Math.pow(10, random.nextInt(6) - 3);
      b.append(String.format(java.util.Locale.ROOT, "%.8e,", i * 2.5e-6))
          .append(String.format(java.util.Locale.ROOT, "%.3e,", random.nextGaussian() * scale))
          .append(random.nextInt(50) == 0 ? random.nextGaussian() : random.nextInt(3))
          .append('\n');
    }
    return Files.writeString(folder.resolve("large.csv"), b);
  }

  @Test
  void threadsBlocksAndStorageDoNotMatter() throws Exception {
    Path file = large();
    String whole = read(file, new Division(1, 64 << 20, Long.MAX_VALUE));
    assertThat(whole).contains("sampling interval, value=2.5 µs (400 kHz)");
    for (int bytes : new int[] {1000, 4096, 77_777, 512 << 10}) {
      for (int threads : new int[] {1, 2}) {
        for (long memory : new long[] {0, 50_000, Long.MAX_VALUE}) {
          assertThat(read(file, new Division(threads, bytes, memory)))
              .as(bytes + " bytes, " + threads + " threads, " + memory + " in memory")
              .isEqualTo(whole);
        }
      }
    }
  }

  @Test
  void theFirstErrorOfTheFileIsReported() throws Exception {
    StringBuilder b = new StringBuilder("Time (ms),CH1 (V)\n");
    for (int i = 0; i < 20_000; i++) {
      b.append(i).append(i == 9_000 || i == 9_001 || i == 15_000 ? ",oops\n" : ",1\n");
    }
    Path file = Files.writeString(folder.resolve("errors.csv"), b);
    for (int bytes : new int[] {64, 1000, 100_000}) {
      for (int threads : new int[] {1, 2}) {
        assertThat(read(file, new Division(threads, bytes, 1 << 20)))
            .isEqualTo(
                "errors.csv: line 9002, column 2: 'oops' is no number; mend or remove the line");
      }
    }
  }

  @Test
  void progressIsToldAndAStopIsHeard() throws Exception {
    Path file = large();
    long[] last = {0, 0, 0};
    ReadingProgress watch =
        new ReadingProgress() {
          @Override
          public void advanced(long bytesRead, long totalBytes) {
            assertThat(bytesRead).isBetween(last[0], totalBytes);
            last[0] = bytesRead;
            last[1] = totalBytes;
            last[2]++;
          }
        };
    try (ByteSource source =
        ByteSource.open(file, ReadingOptions.withDefaults().withProgress(watch))) {
      TextCapture.read(source, ReadingOptions.withDefaults(), new Division(2, 9999, 0)).close();
    }
    assertThat(last[0]).isEqualTo(Files.size(file)).isEqualTo(last[1]);
    assertThat(last[2]).isGreaterThan(10);
    ReadingProgress stop =
        new ReadingProgress() {
          private int calls;

          @Override
          public void advanced(long bytesRead, long totalBytes) {
            calls++;
          }

          @Override
          public boolean isCancelled() {
            return calls > 5;
          }
        };
    try (ByteSource source =
        ByteSource.open(file, ReadingOptions.withDefaults().withProgress(stop))) {
      assertThatThrownBy(
              () ->
                  TextCapture.read(source, ReadingOptions.withDefaults(), new Division(2, 9999, 0)))
          .isInstanceOf(CancellationException.class)
          .hasMessage("large.csv: reading was stopped");
    }
  }

  @Test
  void theFileIsNotChanged() throws Exception {
    Path file = large();
    byte[] before = Files.readAllBytes(file);
    read(file, new Division(2, 4096, 0));
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }
}
