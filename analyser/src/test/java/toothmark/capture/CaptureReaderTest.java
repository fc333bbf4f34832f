package toothmark.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The kind of a file is told by its content; compression is RFC 1952. */
class CaptureReaderTest {

  private static final String TEXT = "Time (ms),CH1 (V)\n0,1.5\n1,-2.5\n2,3\n";
  private static final String DUMP =
      "$timescale 1 us $end $var wire 1 ! hall $end $enddefinitions $end #0 0! #7 1! #9";

  @TempDir Path folder;

  private String read(String name, byte[] bytes) throws Exception {
    Path file = Files.write(folder.resolve(name), bytes);
    try (Capture c = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      return CaptureText.describe(c);
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] packed(String... members) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (String member : members) {
      try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
        gzip.write(bytes(member));
      }
    }
    return out.toByteArray();
  }

  @Test
  void theNameDoesNotMatter() throws Exception {
    assertThat(read("a.vcd", bytes(TEXT)))
        .isEqualTo("CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.5 3.0\n");
    assertThat(read("a.csv", bytes(DUMP)))
        .isEqualTo("hall: levels 0.0 at 0.0 1.0 at 7.0E-6 until 9.0E-6, step 1.0E-6\n");
  }

  @Test
  void packedFiles() throws Exception {
    assertThat(read("a.csv.gz", packed(TEXT))).isEqualTo(read("a.csv", bytes(TEXT)));
    assertThat(read("dump", packed(DUMP))).isEqualTo(read("a.vcd", bytes(DUMP)));
  }

  /** RFC 1952, 2.2: a file is a series of members; their contents follow one another. */
  @Test
  void packedInSeveralMembers() throws Exception {
    assertThat(read("a.gz", packed(TEXT.substring(0, 25), TEXT.substring(25))))
        .isEqualTo(read("a.csv", bytes(TEXT)));
  }

  @Test
  void packedAndCutShort() throws Exception {
    byte[] whole = packed(TEXT);
    assertThatThrownBy(() -> read("a.gz", Arrays.copyOf(whole, whole.length - 12)))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "a.gz: the compressed data are broken or cut short (Unexpected end of ZLIB input"
                + " stream); copy the file again");
    assertThatThrownBy(() -> read("b.gz", Arrays.copyOf(whole, 5)))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessageStartingWith("b.gz: the compressed data are broken or cut short");
  }

  @Test
  void emptyFiles() {
    assertThatThrownBy(() -> read("a.csv", new byte[0]))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("a.csv: the file is empty; record the capture again");
    assertThatThrownBy(() -> read("a.gz", packed("")))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("a.gz: the file is empty; record the capture again");
  }

  @Test
  void noSuchFile() {
    assertThatThrownBy(
            () -> CaptureReader.read(folder.resolve("none.csv"), ReadingOptions.withDefaults()))
        .isInstanceOf(NoSuchFileException.class);
  }
}
