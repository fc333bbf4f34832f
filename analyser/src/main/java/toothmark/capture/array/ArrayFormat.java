package toothmark.capture.array;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import toothmark.capture.StatedLayout;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.source.Compression;

/** Forms in which arrays come. */
enum ArrayFormat {
  NUMPY("NumPy array") {
    @Override
    boolean matches(byte[] head) {
      return NumpyHeader.looksLike(head, 0);
    }

    @Override
    void read(ArrayInput in, StatedLayout stated, Variables into)
        throws IOException, UnreadableCaptureException {
      new NumpyReader(in, into).readOne("");
    }
  },
  NUMPY_ARCHIVE("archive of NumPy arrays") {
    @Override
    boolean matches(byte[] head) {
      return Compression.isNumpyArchive(head);
    }

    @Override
    void read(ArrayInput in, StatedLayout stated, Variables into)
        throws IOException, UnreadableCaptureException {
      NumpyReader.readArchive(in, into);
    }
  },
  HDF5("HDF5 file") {
    @Override
    boolean matches(byte[] head) {
      return superblock(head) >= 0;
    }

    @Override
    void read(ArrayInput in, StatedLayout stated, Variables into)
        throws IOException, UnreadableCaptureException {
      new HdfReader(in, into).read();
    }
  },
  MATLAB("MATLAB file, level 5") {
    @Override
    boolean matches(byte[] head) {
      return starts(head, 0, "MATLAB 5.0 MAT-file");
    }

    @Override
    void read(ArrayInput in, StatedLayout stated, Variables into)
        throws IOException, UnreadableCaptureException {
      new MatlabReader(in, into).read();
    }
  },
  RAW("bare numbers, as the job sheet states") {
    @Override
    boolean matches(byte[] head) {
      return false;
    }

    @Override
    void read(ArrayInput in, StatedLayout stated, Variables into)
        throws IOException, UnreadableCaptureException {
      RawReader.read(in, stated, into);
    }
  };

  final String text;

  ArrayFormat(String text) {
    this.text = text;
  }

  static Optional<ArrayFormat> of(byte[] head) {
    for (ArrayFormat format : values()) {
      if (format.matches(head)) {
        return Optional.of(format);
      }
    }
    return Optional.empty();
  }

  static boolean starts(byte[] head, int at, String mark) {
    byte[] wanted = mark.getBytes(StandardCharsets.ISO_8859_1);
    int end = at + wanted.length;
    return end <= head.length && java.util.Arrays.equals(head, at, end, wanted, 0, wanted.length);
  }

  /** Where an HDF5 superblock begins: at 0, 512, 1024, 2048 …; -1 when there is none. */
  static int superblock(byte[] head) {
    for (int at = 0; at < head.length; at = Math.max(512, 2 * at)) {
      if (starts(head, at, "\u0089HDF\r\n\u001a\n")) {
        return at;
      }
    }
    return -1;
  }

  abstract boolean matches(byte[] head);

  /** Reads all arrays. */
  abstract void read(ArrayInput in, StatedLayout stated, Variables into)
      throws IOException, UnreadableCaptureException;
}
