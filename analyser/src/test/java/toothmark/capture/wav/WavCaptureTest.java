package toothmark.capture.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;

/**
 * Sound files by the layout of RIFF/WAVE (Microsoft and IBM, 1991) and RF64 (EBU Tech 3306). The
 * PCM files are written by the JDK's own writer, an outside witness.
 */
class WavCaptureTest {

  private static final String CAUTION =
      "a sound card blocks direct voltage: slow signals are drawn towards zero between edges";

  @TempDir Path folder;

  private Path file(String name, byte[] bytes) throws Exception {
    return Files.write(folder.resolve(name), bytes);
  }

  private static String read(Path file) throws Exception {
    try (Capture capture = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      assertThat(capture.reading().doubts()).endsWith(CAUTION);
      return CaptureText.describe(capture).replace("! " + CAUTION + "\n", "");
    }
  }

  /** A file as {@code javax.sound.sampled} writes it. */
  private Path written(int bits, int channels, byte[] samples) throws Exception {
    AudioFormat format = new AudioFormat(1000f, bits, channels, bits > 8, false);
    long frames = samples.length / format.getFrameSize();
    Path file = folder.resolve(bits + "-" + channels + ".wav");
    try (AudioInputStream in =
        new AudioInputStream(new ByteArrayInputStream(samples), format, frames)) {
      AudioSystem.write(in, AudioFileFormat.Type.WAVE, file.toFile());
    }
    return file;
  }

  @Test
  void eightBits() throws Exception {
    assertThat(read(written(8, 1, new byte[] {0, (byte) 128, (byte) 192, (byte) 255})))
        .isEqualTo("1 in FS: every 0.001 s from 0.0 s: -1.0 0.0 0.5 0.9921875\n");
  }

  @Test
  void sixteenBitsInStereo() throws Exception {
    ByteBuffer b = ByteBuffer.allocate(12).order(ByteOrder.LITTLE_ENDIAN);
    b.putShort((short) 0x4000).putShort((short) -0x8000);
    b.putShort((short) -0x2000).putShort((short) 0).putShort((short) 1).putShort((short) -1);
    assertThat(read(written(16, 2, b.array())))
        .isEqualTo(
            """
            1 in FS: every 0.001 s from 0.0 s: 0.5 -0.25 3.0517578125E-5
            2 in FS: every 0.001 s from 0.0 s: -1.0 0.0 -3.0517578125E-5
            """);
  }

  @Test
  void twentyFourAndThirtyTwoBits() throws Exception {
    byte[] b24 = {0, 0, 0x40, 0, 0, (byte) 0x80, (byte) 0xff, (byte) 0xff, (byte) 0xff};
    assertThat(read(written(24, 1, b24)))
        .isEqualTo("1 in FS: every 0.001 s from 0.0 s: 0.5 -1.0 -1.1920928955078125E-7\n");
    byte[] b32 = {0, 0, 0, 0x40, 0, 0, 0, (byte) 0x80};
    assertThat(read(written(32, 1, b32)))
        .isEqualTo("1 in FS: every 0.001 s from 0.0 s: 0.5 -1.0\n");
  }

  private static byte[] chunk(String id, byte[] body) {
    ByteBuffer b = ByteBuffer.allocate(8 + body.length + (body.length & 1));
    b.order(ByteOrder.LITTLE_ENDIAN).put(id.getBytes(StandardCharsets.ISO_8859_1));
    return b.putInt(body.length).put(body).array();
  }

  private static byte[] format(int tag, int channels, int bits, int size) {
    ByteBuffer b = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    int frame = channels * bits / 8;
    b.putShort((short) tag).putShort((short) channels).putInt(1000).putInt(1000 * frame);
    b.putShort((short) frame).putShort((short) bits);
    return b.array();
  }

  private static byte[] riff(String id, byte[]... chunks) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(id.getBytes(StandardCharsets.ISO_8859_1));
    out.write(new byte[] {-1, -1, -1, -1});
    out.write("WAVE".getBytes(StandardCharsets.ISO_8859_1));
    for (byte[] chunk : chunks) {
      out.write(chunk);
    }
    return out.toByteArray();
  }

  private static byte[] floats(float... values) {
    ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
    for (float v : values) {
      b.putFloat(v);
    }
    return b.array();
  }

  @Test
  void floatsWithChunksAround() throws Exception {
    byte[] bytes =
        riff(
            "RIFF",
            chunk("LIST", new byte[] {1, 2, 3}),
            chunk("fmt ", format(3, 1, 32, 16)),
            chunk("fact", new byte[4]),
            chunk("data", floats(0.5f, -2, Float.NaN, Float.NEGATIVE_INFINITY)),
            chunk("junk", new byte[5]));
    assertThat(read(file("f.wav", bytes)))
        .isEqualTo("1 in FS: every 0.001 s from 0.0 s: 0.5 -2.0 0.0 -1.0\n");
  }

  @Test
  void doublesInTheExtensibleForm() throws Exception {
    byte[] format = format(0xFFFE, 1, 64, 40);
    ByteBuffer.wrap(format).order(ByteOrder.LITTLE_ENDIAN).putShort(24, (short) 3);
    byte[] data = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN).putDouble(0.1).array();
    assertThat(read(file("d.wav", riff("RIFF", chunk("fmt ", format), chunk("data", data)))))
        .isEqualTo("1 in FS: every 0.001 s from 0.0 s: 0.1\n");
  }

  /** EBU Tech 3306: sizes beyond 32 bits stand in ds64, those at their place are 0xFFFFFFFF. */
  @Test
  void rf64() throws Exception {
    byte[] ds64 = new byte[28];
    ByteBuffer.wrap(ds64).order(ByteOrder.LITTLE_ENDIAN).putLong(8, 4);
    byte[] data = chunk("data", new byte[] {0, 0x40, 0, 0x20, 9, 9});
    ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(4, -1);
    byte[] bytes = riff("RF64", chunk("ds64", ds64), chunk("fmt ", format(1, 1, 16, 16)), data);
    assertThat(read(file("r.wav", bytes)))
        .isEqualTo("1 in FS: every 0.001 s from 0.0 s: 0.5 0.25\n");
  }

  @Test
  void aRecordingThatWasCutShort() throws Exception {
    byte[] data = chunk("data", new byte[] {0, 0x40, 0, 0x20, 7});
    ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(4, 2000);
    byte[] bytes = riff("RIFF", chunk("fmt ", format(1, 1, 16, 16)), data);
    assertThat(read(file("c.wav", bytes)))
        .isEqualTo(
            """
            1 in FS: every 0.001 s from 0.0 s: 0.5 0.25 0.0
            ! the header promises 1000 samples a channel, the file holds 3; the recording was cut short
            """
                .replace("0.0\n", "2.13623046875E-4\n"));
  }

  @Test
  void aHeaderThatWasNeverFilledIn() throws Exception {
    byte[] data = chunk("data", new byte[] {0, 0x40});
    ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(4, 0);
    byte[] bytes = riff("RIFF", chunk("fmt ", format(1, 1, 16, 16)), data);
    assertThat(read(file("z.wav", bytes)))
        .isEqualTo(
            """
            1 in FS: every 0.001 s from 0.0 s: 0.5
            ! the header states no samples, as when a recorder is stopped; read to the end
            """);
  }

  @Test
  void packed() throws Exception {
    Path plain = written(16, 1, new byte[] {0, 0x40, 0, 0x20});
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
      gzip.write(Files.readAllBytes(plain));
    }
    assertThat(read(file("p.wav.gz", out.toByteArray()))).isEqualTo(read(plain));
  }

  @Test
  void readFromAnywhere() throws Exception {
    ByteBuffer b = ByteBuffer.allocate(4 * 30_000).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < 30_000; i++) {
      b.putShort((short) i).putShort((short) -i);
    }
    try (Capture capture =
        CaptureReader.read(written(16, 2, b.array()), ReadingOptions.withDefaults())) {
      SampledSignal second = (SampledSignal) capture.channels().get(1).signal();
      assertThat(second.size()).isEqualTo(30_000);
      double[] v = new double[20_000];
      second.read(9_000, v, 20_000);
      for (int i = 0; i < 20_000; i++) {
        assertThat(v[i]).isEqualTo(-(9_000 + i) / 32_768.0);
      }
    }
  }

  @Test
  void refusals() throws Exception {
    byte[] format = chunk("fmt ", format(1, 1, 16, 16));
    byte[] data = chunk("data", new byte[2]);
    assertThatThrownBy(() -> read(file("a.wav", riff("RIFF", format))))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("a.wav: the sound file has no data chunk in its 36 bytes; copy the file again");
    assertThatThrownBy(() -> read(file("b.wav", riff("RIFF", data, format))))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("b.wav: byte 20: the samples come before their format; copy the file again");
    assertThatThrownBy(
            () -> read(file("c.wav", riff("RIFF", chunk("fmt ", format(6, 1, 8, 16)), data))))
        .isInstanceOf(UnsupportedCaptureException.class)
        .hasMessage(
            "c.wav: byte 20: sound format 6 with 8 bits is not supported; save as PCM of 8, 16, 24"
                + " or 32 bits or as float");
    assertThatThrownBy(
            () -> read(file("d.wav", riff("RIFF", chunk("fmt ", format(1, 0, 16, 16)), data))))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "d.wav: byte 20: the sound format states 0 channels, 1000 Hz and 0 bytes a frame;"
                + " record again");
    assertThatThrownBy(() -> read(file("e.wav", riff("RIFF", format, chunk("data", new byte[0])))))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("e.wav: byte 44: the sound file holds no samples; record again");
    byte[] list = chunk("LIST", new byte[] {'I', 'N', 'F', 'O'});
    byte[] none = chunk("data", new byte[0]);
    assertThatThrownBy(() -> read(file("f.wav", riff("RIFF", format, none, list))))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("f.wav: byte 44: the sound file holds no samples; record again");
    byte[] contradicts = format(1, 1, 16, 16);
    contradicts[12] = 4; // bytes a frame
    assertThatThrownBy(() -> read(file("g.wav", riff("RIFF", chunk("fmt ", contradicts), data))))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "g.wav: byte 20: the sound format states 16 bits a sample, but 4 bytes; save the sound"
                + " anew as PCM of 16 bits");
  }

  /** 0x4000 is half of full scale. */
  @Test
  void chunksThatAreNotPaddedAndDataInTwo() throws Exception {
    byte[] format = chunk("fmt ", format(1, 1, 16, 16));
    byte[] padded = chunk("bext", new byte[3]);
    byte[] bext = Arrays.copyOf(padded, 11);
    byte[] data = chunk("data", new byte[] {0, 0x40, 0, (byte) 0xc0});
    assertThat(read(file("a.wav", riff("RIFF", bext, format, data, data))))
        .isEqualTo(
            "1 in FS: every 0.001 s from 0.0 s: 0.5 -0.5\n"
                + "! samples in a second data chunk, at byte 59, were left out\n");
  }

  @Test
  void otherKindsOfFile() throws Exception {
    byte[] sevenZip = {'7', 'z', (byte) 0xbc, (byte) 0xaf, 0};
    assertThatThrownBy(() -> read(file("a.7z", sevenZip)))
        .isInstanceOf(UnsupportedCaptureException.class)
        .hasMessage(
            "a.7z: this is a 7z archive, which is not supported; unpack it, or export the capture"
                + " as delimited text, value change dump or WAV");
  }
}
