package toothmark.capture.text;

import java.util.Arrays;

/** The lines of a run of bytes; they end in LF, CR LF or CR. */
final class HeadLines {

  private final TextInput input;
  private final byte[] bytes;
  private int[] starts = new int[1024];
  private int[] ends = new int[1024];
  private int size;

  /**
   * Finds the lines.
   *
   * @param bytes the text
   * @param complete whether the last line ends where the bytes end; else it is left out
   */
  HeadLines(TextInput input, byte[] bytes, boolean complete) {
    this.input = input;
    this.bytes = bytes;
    int start = 0;
    for (int p = 0; p < bytes.length; p++) {
      byte b = bytes[p];
      if (b == '\n' || b == '\r') {
        boolean two = b == '\r' && p + 1 < bytes.length && bytes[p + 1] == '\n';
        add(start, p);
        p += two ? 1 : 0;
        start = p + 1;
      }
    }
    if (complete && start < bytes.length) {
      add(start, bytes.length);
    }
  }

  private void add(int start, int end) {
    if (size == starts.length) {
      starts = Arrays.copyOf(starts, 2 * size);
      ends = Arrays.copyOf(ends, 2 * size);
    }
    starts[size] = start;
    ends[size++] = end;
  }

  int size() {
    return size;
  }

  /** A line without its end. */
  String line(int index) {
    return input.decode(bytes, starts[index], ends[index]);
  }

  /** Where a line starts, in bytes; for the line after the last, where the bytes end. */
  int start(int index) {
    return index < size ? starts[index] : bytes.length;
  }
}
