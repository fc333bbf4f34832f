package toothmark.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.airlift.compress.zstd.ZstdOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.XZOutputStream;

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
            "a.gz: the compressed data cannot be read (Unexpected end of ZLIB input stream); copy"
                + " or unpack the file again");
    assertThatThrownBy(() -> read("b.gz", Arrays.copyOf(whole, 5)))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessageStartingWith("b.gz: the compressed data cannot be read");
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

  private interface Packer {
    OutputStream around(OutputStream out) throws IOException;
  }

  private static byte[] packed(byte[] content, Packer packer) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (OutputStream packing = packer.around(out)) {
      packing.write(content);
    }
    return out.toByteArray();
  }

  private static byte[] zipped(String... names) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (String name : names) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(name.endsWith("/") ? new byte[0] : bytes(TEXT));
      }
    }
    return out.toByteArray();
  }

  @Test
  void otherCompressions() throws Exception {
    String plain = read("a.csv", bytes(TEXT));
    assertThat(read("a.csv.zst", packed(bytes(TEXT), ZstdOutputStream::new))).isEqualTo(plain);
    assertThat(read("a.xz", packed(bytes(TEXT), o -> new XZOutputStream(o, new LZMA2Options()))))
        .isEqualTo(plain);
    assertThat(read("a.zip", zipped("shop/", "shop/a.csv"))).isEqualTo(plain);
  }

  @Test
  void otherCompressionsCutShort() throws Exception {
    byte[] long1 = bytes("Time (ms),CH1 (V)\n" + "0,1\n".repeat(200));
    byte[] zstd = packed(long1, ZstdOutputStream::new);
    byte[] xz = packed(long1, o -> new XZOutputStream(o, new LZMA2Options()));
    for (byte[] whole : new byte[][] {zstd, xz}) {
      assertThatThrownBy(() -> read("a", Arrays.copyOf(whole, whole.length / 2)))
          .isInstanceOf(UnreadableCaptureException.class)
          .hasMessageStartingWith("a: the compressed data cannot be read (");
    }
    byte[] odd = xz.clone();
    odd[odd.length / 2] ^= 0x55;
    assertThatThrownBy(() -> read("a", odd)).isInstanceOf(UnreadableCaptureException.class);
  }

  /** RFC 8878, 3.1.2: 0x184D2A50 to 0x184D2A5F, a size, and as many bytes, wherever a frame may. */
  @Test
  void zstandardFramesToBeSkipped() throws Exception {
    byte[] text = bytes("Time (ms),CH1 (V)\n" + "0,1\n1,2\n2,4\n".repeat(100_000));
    byte[] skipped = {0x5e, 0x2a, 0x4d, 0x18, 3, 0, 0, 0, 'a', 'b', 'c'};
    byte[] one = packed(Arrays.copyOf(text, 400_018), ZstdOutputStream::new);
    byte[] other = packed(Arrays.copyOfRange(text, 400_018, text.length), ZstdOutputStream::new);
    byte[] all = joined(skipped, skipped, one, skipped, other, skipped);
    assertThat(read("a", all)).isEqualTo(read("a", text));
    assertThatThrownBy(() -> read("a", Arrays.copyOf(all, all.length - 1)))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "a: the compressed data cannot be read (it ends within a frame to be skipped); copy or"
                + " unpack the file again");
  }

  private static byte[] joined(byte[]... parts) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  @Test
  void archivesThatAreNoSingleCapture() throws Exception {
    assertThatThrownBy(() -> read("a.zip", zipped("a.csv", "b.csv")))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "a.zip: the compressed data cannot be read (the archive holds several files, such as"
                + " a.csv and b.csv; unpack it); copy or unpack the file again");
    assertThatThrownBy(() -> read("a.xlsx", zipped("[Content_Types].xml", "xl/a.xml")))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessageContaining("this is a spreadsheet; save it as delimited text");
  }

  @Test
  void aFolder() throws Exception {
    Path inner = Files.createDirectory(folder.resolve("captures"));
    assertThatThrownBy(() -> CaptureReader.read(inner, ReadingOptions.withDefaults()))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("captures: this is a folder, not a capture; name a file in it");
  }

  @Test
  void packedTwice() throws Exception {
    byte[] once = packed(TEXT);
    assertThatThrownBy(() -> read("a", packed(once, GZIPOutputStream::new)))
        .isInstanceOf(UnsupportedCaptureException.class)
        .hasMessage(
            "a: this is packed twice, with gzip inside, which is not supported; unpack it, or"
                + " export the capture as delimited text, value change dump or WAV");
  }

  @Test
  void onlyTheStart() throws Exception {
    Path file = Files.write(folder.resolve("a.csv"), bytes(TEXT));
    ReadingOptions start = ReadingOptions.withDefaults().withFirstBytes(TEXT.length() - 2);
    try (Capture c = CaptureReader.read(file, start)) {
      assertThat(CaptureText.describe(c))
          .isEqualTo(
              """
              CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.5
              ! only the start of the file was read
              """);
    }
  }

  @Test
  void standardInput() throws Exception {
    InputStream before = System.in;
    for (byte[] content : new byte[][] {bytes(TEXT), packed(TEXT), bytes(DUMP)}) {
      System.setIn(new ByteArrayInputStream(content));
      try (Capture c = CaptureReader.read(Path.of("-"), ReadingOptions.withDefaults())) {
        assertThat(c.file()).isEqualTo("standard input");
        assertThat(CaptureText.describe(c)).isEqualTo(read("a", content));
      } finally {
        System.setIn(before);
      }
    }
  }
}
