package toothmark.capture.array;

import java.io.IOException;
import java.nio.ByteOrder;
import java.util.Collections;
import java.util.Optional;
import toothmark.capture.StatedColumn;
import toothmark.capture.StatedLayout;
import toothmark.capture.UnreadableCaptureException;

/** Reads bare numbers in the form that the user states. */
final class RawReader {

  private RawReader() {}

  static void read(ArrayInput in, StatedLayout stated, Variables into)
      throws IOException, UnreadableCaptureException {
    StatedLayout.RawNumbers form = stated.raw().orElseThrow();
    int columns = Math.max(1, stated.columns().size());
    int rowBytes = columns * form.type().bytes();
    long bytes = in.file().size() - form.headerBytes();
    if (bytes < 2L * rowBytes) {
      throw new UnreadableCaptureException(
          in.name()
              + ": "
              + in.file().size()
              + " bytes are too few for a header of "
              + form.headerBytes()
              + " bytes and two rows of "
              + rowBytes
              + "; correct capture.raw in the job sheet");
    }
    if (bytes % rowBytes != 0) {
      into.doubt(
          "the last "
              + bytes % rowBytes
              + " bytes do not fill a row of "
              + rowBytes
              + ", left out");
    }
    in.file().position(form.headerBytes());
    ByteOrder order =
        form.order() == StatedLayout.Order.BIG ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    NumpyHeader.Field number =
        new NumpyHeader.Field("", Optional.of(form.type()), form.type().bytes(), order);
    new BinaryBlock(in, in, into)
        .read(
            StatedColumn.NOTHING,
            new Shape(bytes / rowBytes, columns, false),
            Collections.nCopies(1, number));
  }
}
