package toothmark.capture.array;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.UnreadableCaptureException;

/**
 * Files that NumPy, SciPy and h5py wrote ({@code make.py} beside them): 12 samples of a wave at
 * 1024 Hz.
 */
class ArrayCaptureTest {

  private static final String EVERY = "every 9.765625E-4 s from 0.0 s: ";
  private static final String WAVE = "0.0 0.5 1.0 0.5 0.0 -0.5 -1.0 -0.5 0.0 0.5 1.0 0.5\n";
  private static final String TWICE = "0.0 1.0 2.0 1.0 0.0 -1.0 -2.0 -1.0 0.0 1.0 2.0 1.0\n";
  private static final ReadingOptions AT_1024_HZ = CaptureText.interval(1.0 / 1024);

  @TempDir Path folder;

  private static Path resource(String name) throws Exception {
    return Path.of(ArrayCaptureTest.class.getResource(name).toURI());
  }

  private static String read(String name, ReadingOptions options) throws Exception {
    return read(resource(name), options);
  }

  private static String read(Path file, ReadingOptions options) throws Exception {
    try (Capture capture = CaptureReader.read(file, options)) {
      return CaptureText.describe(capture);
    }
  }

  private static String read(String name) throws Exception {
    return read(name, ReadingOptions.withDefaults());
  }

  @Test
  void numpyArrays() throws Exception {
    assertThat(read("one-axis.npy", AT_1024_HZ)).isEqualTo("1: " + EVERY + WAVE);
    assertThat(read("rows-of-channels.npy", AT_1024_HZ))
        .isEqualTo("1: " + EVERY + WAVE + "2: " + EVERY + TWICE);
  }

  @Test
  void numpyColumnsOfWhichTheFirstRises() throws Exception {
    assertThat(read("big-endian-columns.npy"))
        .isEqualTo("1: " + EVERY + WAVE + "! the column of times has no unit; taken as seconds\n");
  }

  @Test
  void numpyFields() throws Exception {
    assertThat(read("fields.npy"))
        .isEqualTo(
            "CH1 in count: "
                + EVERY
                + "0.0 500.0 1000.0 500.0 0.0 -500.0 -1000.0 -500.0 0.0 500.0 1000.0 500.0\n"
                + "flag: "
                + EVERY
                + "0.0 1.0 1.0 1.0 0.0 0.0 0.0 0.0 0.0 1.0 1.0 1.0\n"
                + "! channel CH1 holds whole numbers, taken as counts of a converter; nothing says"
                + " what a count is worth in volts: state scale and unit in [[capture.columns]] of the"
                + " job sheet\n");
  }

  /** A field of two numbers must not shift those behind it. */
  @Test
  void numpyFieldsOfSeveralNumbers() {
    assertThatThrownBy(() -> read("pairs.npy"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "pairs.npy: no array of two or more numbers was found in this NumPy array (the array"
                + " was left out: it holds no plain numbers); export the capture anew");
  }

  @Test
  void aRowOfAMatrixThatRisesIsTheTime() throws Exception {
    assertThat(read("rising-row.mat"))
        .isEqualTo(
            "data 2: " + EVERY + WAVE + "! the column of times has no unit; taken as seconds\n");
  }

  /** The rate is stated in kHz by the name of the number. */
  @Test
  void matlabStructuresInStructures() throws Exception {
    assertThat(read("structures.mat"))
        .isEqualTo(
            "CRANK: "
                + EVERY
                + WAVE
                + "COIL: "
                + EVERY
                + TWICE
                + "! 'owner' was left out: it holds no real numbers\n");
  }

  /** 500 counts of 0.5 mV and of 0.25 mV; each group is a channel. Truth values are levels. */
  @Test
  void hdf5GroupsWithAScaleEach() throws Exception {
    assertThat(read("groups.h5"))
        .isEqualTo(
            "CH1 in V: "
                + EVERY
                + "0.0 0.25 0.5 0.25 0.0 -0.25 -0.5 -0.25 0.0 0.25 0.5 0.25\n"
                + "CH2 in V: "
                + EVERY
                + "0.0 0.125 0.25 0.125 0.0 -0.125 -0.25 -0.125 0.0 0.125 0.25 0.125\n"
                + "coil: "
                + EVERY
                + "0.0 1.0 1.0 1.0 0.0 0.0 0.0 0.0 0.0 1.0 1.0 1.0\n");
  }

  @Test
  void numpyArchives() throws Exception {
    assertThat(read("archive.npz"))
        .isEqualTo(
            "crank: "
                + EVERY
                + WAVE
                + "coil: "
                + EVERY
                + TWICE
                + "! 'notes' was left out: 5 numbers, not 12 as the longest\n");
    assertThat(read("packed.npz"))
        .isEqualTo(
            "crank: " + EVERY + WAVE + "! the column of times has no unit; taken as seconds\n");
  }

  @Test
  void matlabMatrices() throws Exception {
    assertThat(read("level5.mat"))
        .isEqualTo(
            "data 1: "
                + EVERY
                + WAVE
                + "data 2: "
                + EVERY
                + TWICE
                + "! 'note' was left out: it holds no real numbers\n");
  }

  @Test
  void matlabStructures() throws Exception {
    assertThat(read("level5-packed.mat"))
        .isEqualTo(
            "CH1 in count: "
                + EVERY
                + "0.0 500.0 1000.0 500.0 0.0 -500.0 -1000.0 -500.0 0.0 500.0 1000.0 500.0\n"
                + "! 'other' was left out: 3 numbers, not 12 as the longest\n"
                + "! the column of times has no unit; taken as seconds\n"
                + "! channel CH1 holds whole numbers, taken as counts of a converter; nothing says"
                + " what a count is worth in volts: state scale and unit in [[capture.columns]] of the"
                + " job sheet\n");
  }

  /**
   * NetCDF climate and forecast conventions 1.11, 8.1: value = packed · scale_factor + add_offset.
   */
  @Test
  void hdf5WithAttributes() throws Exception {
    assertThat(read("attributes.h5"))
        .isEqualTo(
            "crank in V: "
                + EVERY
                + "0.25 0.5 0.75 0.5 0.25 0.0 -0.25 0.0 0.25 0.5 0.75 0.5\n"
                + "coil: "
                + EVERY
                + TWICE
                + "! 'comment' was left out: it holds no real numbers\n");
  }

  @Test
  void hdf5RowsOfChannels() throws Exception {
    assertThat(read("rows.h5"))
        .isEqualTo(
            "wave 1: "
                + EVERY
                + WAVE
                + "wave 2: "
                + EVERY
                + TWICE
                + "! 'table' was left out: its shape is [2, 3, 4]\n"
                + "! the column of times has no unit; taken as seconds\n");
  }

  @Test
  void hdf5InManySlices() throws Exception {
    try (Capture c = CaptureReader.read(resource("slices.h5"), ReadingOptions.withDefaults())) {
      SampledSignal second = (SampledSignal) c.channels().get(1).signal();
      assertThat(c.channels()).extracting(x -> x.name()).containsExactly("v 1", "v 2");
      assertThat(second.size()).isEqualTo(70_000);
      assertThat(second.intervalSeconds()).isEqualTo(20e-6);
      double[] all = new double[70_000];
      second.read(0, all, all.length);
      for (int i = 0; i < all.length; i++) {
        assertThat(all[i]).isEqualTo((2 * i + 1) % 1000);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"archive.npz", "one-axis.npy", "level5-packed.mat", "attributes.h5"})
  void packedAndFromStandardInput(String name) throws Exception {
    Path packed = folder.resolve("a.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      Files.copy(resource(name), out);
    }
    String plain = read(name, AT_1024_HZ);
    assertThat(read(packed, AT_1024_HZ)).isEqualTo(plain);
    InputStream before = System.in;
    System.setIn(new ByteArrayInputStream(Files.readAllBytes(resource(name))));
    try {
      assertThat(read(Path.of("-"), AT_1024_HZ)).isEqualTo(plain);
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void noRealNumbers() {
    assertThatThrownBy(() -> read("complex.npy"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "complex.npy: no array of two or more numbers was found in this NumPy array (the array"
                + " was left out: it holds no real numbers); export the capture anew");
  }

  @Test
  void arraysWithoutAClock() {
    assertThatThrownBy(() -> read("one-axis.npy"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessageStartingWith(
            "one-axis.npy: row 1: neither a column of times nor a sampling interval was found;"
                + " state capture.interval_s or capture.rate_hz in the job sheet");
  }

  /** However a file is cut short: an error, or every channel as in the whole file. */
  @ParameterizedTest
  @ValueSource(
      strings = {"archive.npz", "fields.npy", "level5-packed.mat", "level5.mat", "rows.h5"})
  void cutShort(String name) throws Exception {
    byte[] whole = Files.readAllBytes(resource(name));
    String channels = channels(read(name, AT_1024_HZ));
    int refused = 0;
    for (int n = 200; n < whole.length; n += 13) {
      Path file = Files.write(folder.resolve("cut"), Arrays.copyOf(whole, n));
      try {
        assertThat(channels(read(file, AT_1024_HZ))).as(n + " bytes").isEqualTo(channels);
      } catch (UnreadableCaptureException e) {
        refused++;
      }
    }
    assertThat(refused).isGreaterThan((whole.length - 200) / 13 / 2);
  }

  private static String channels(String described) {
    return described.lines().filter(l -> !l.startsWith("!")).collect(Collectors.joining("\n"));
  }
}
