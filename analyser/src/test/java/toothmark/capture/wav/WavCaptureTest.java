package toothmark.capture.wav;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;

/** The files are written by the platform's own sound library, or by hand after the standard. */
class WavCaptureTest {

  private static final double[] LEFT = {0, 0.5, -0.5, 0.25, -1};

  @TempDir private Path folder;

  private double[] read(Path file, String channel) throws Exception {
    try (Capture c = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      SampledSignal s = (SampledSignal) c.channel(channel).orElseThrow().signal();
      double[] v = new double[(int) s.size()];
      s.read(0, v, v.length);
      return v;
    }
  }

  private static byte[] frames(int bits) {
    int bytes = bits / 8;
    ByteBuffer b = ByteBuffer.allocate(LEFT.length * 2 * bytes).order(ByteOrder.LITTLE_ENDIAN);
    for (double left : LEFT) {
      for (double v : new double[] {left, -left / 2}) {
        long n = Math.round(v * (1L << (bits - 1))) + (bits == 8 ? 128 : 0);
        for (int k = 0; k < bytes; k++) {
          b.put((byte) (n >> 8 * k));
        }
      }
    }
    return b.array();
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 16, 24, 32})
  void readsWhatThePlatformWrites(int bits) throws Exception {
    AudioFormat format =
        new AudioFormat(
            bits == 8 ? AudioFormat.Encoding.PCM_UNSIGNED : AudioFormat.Encoding.PCM_SIGNED,
            48000,
            bits,
            2,
            bits / 4,
            48000,
            false);
    Path file = folder.resolve("a.wav");
    var stream =
        new AudioInputStream(new java.io.ByteArrayInputStream(frames(bits)), format, LEFT.length);
    AudioSystem.write(stream, AudioFileFormat.Type.WAVE, file.toFile());
    assertThat(read(file, "1")).containsExactly(LEFT, within(1e-12));
    assertThat(read(file, "2"))
        .containsExactly(new double[] {0, -0.25, 0.25, -0.125, 0.5}, within(1e-12));
  }

  private Path byHand(String form, long size, int tag, int bits, byte[] data) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteBuffer head = ByteBuffer.allocate(44).order(ByteOrder.LITTLE_ENDIAN);
    head.put(form.getBytes(StandardCharsets.US_ASCII))
        .putInt(-1)
        .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
    head.putInt(16)
        .putShort((short) tag)
        .putShort((short) 1)
        .putInt(96000)
        .putInt(96000 * bits / 8);
    head.putShort((short) (bits / 8))
        .putShort((short) bits)
        .put("data".getBytes(StandardCharsets.US_ASCII))
        .putInt((int) size);
    out.write(head.array());
    out.write(data);
    return Files.write(folder.resolve("b.wav"), out.toByteArray());
  }

  @Test
  void readsFloatsToTheEndWhereTheSizeIsNotStated() throws Exception {
    ByteBuffer data = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
    data.putFloat(0.75f).putFloat(-0.125f);
    assertThat(read(byHand("RF64", 0xFFFFFFFFL, 3, 32, data.array()), "1"))
        .containsExactly(0.75, -0.125);
  }

  @Test
  void saysThatTheFileEndsEarly() throws Exception {
    Path file = byHand("RIFF", 1000, 1, 16, new byte[] {0, 64, 0, -64});
    try (Capture c = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      assertThat(c.reading().doubts())
          .contains("The file ends before its header says; what is there was read.");
    }
  }

  @Test
  void refusesOtherCodings() throws Exception {
    Path file = byHand("RIFF", 4, 6, 8, new byte[4]);
    assertThatThrownBy(() -> CaptureReader.read(file, ReadingOptions.withDefaults()))
        .isInstanceOf(UnsupportedCaptureException.class)
        .hasMessage(
            "b.wav: sound of coding 6 with 8 bits is not supported; export it as PCM of 8 to 32 bits or"
                + " as floating point");
  }

  @Test
  void refusesATornHeader() throws Exception {
    Path file = folder.resolve("c.wav");
    Files.write(file, "RIFF\0\0\0\0WAVEfm".getBytes(StandardCharsets.US_ASCII));
    assertThatThrownBy(() -> CaptureReader.read(file, ReadingOptions.withDefaults()))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("c.wav: the file ends before a chunk of samples; copy or export it again");
  }
}
