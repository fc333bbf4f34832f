package toothmark.capture.array;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.capture.StatedColumn;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.ColumnWriter;

/** Reads numbers that follow one another in a stream. */
final class BinaryBlock {

  private static final int BUFFER = 1 << 16;

  private final ArrayInput file;
  private final InputStream in;
  private final Variables into;

  BinaryBlock(ArrayInput file, InputStream in, Variables into) {
    this.file = file;
    this.in = in;
    this.into = into;
  }

  /** A number of a row: what it is and where it goes. */
  private record Slot(NumpyHeader.Field field, Optional<ColumnWriter> writer) {}

  /**
   * Reads one array.
   *
   * @param about what the file says of it
   * @param shape how it becomes columns
   * @param fields of an element; with several, each is a column and the shape has one
   */
  void read(StatedColumn about, Shape shape, List<NumpyHeader.Field> fields)
      throws IOException, UnreadableCaptureException {
    if (fields.size() > 1) {
      List<Slot> slots = new ArrayList<>();
      for (NumpyHeader.Field f : fields) {
        StatedColumn own = StatedColumn.named(f.name(), "");
        slots.add(new Slot(f, f.type().map(t -> into.start(own, 1).get(0))));
      }
      rows(shape.rows(), slots);
      return;
    }
    List<Slot> slots = new ArrayList<>();
    for (ColumnWriter writer : into.start(about, shape.columns())) {
      slots.add(new Slot(fields.get(0), Optional.of(writer)));
    }
    if (!shape.byColumn()) {
      rows(shape.rows(), slots);
      return;
    }
    for (Slot slot : slots) {
      rows(shape.rows(), List.of(slot));
    }
  }

  private void rows(long count, List<Slot> slots) throws IOException, UnreadableCaptureException {
    int rowBytes = slots.stream().mapToInt(s -> s.field().bytes()).sum();
    byte[] buffer = new byte[Math.max(1, BUFFER / rowBytes) * rowBytes];
    for (long done = 0; done < count; ) {
      int wanted = (int) Math.min(buffer.length, (count - done) * rowBytes);
      int got = in.readNBytes(buffer, 0, wanted);
      if (got < wanted) {
        throw file.broken(
            "the file ends after " + (done + got / rowBytes) + " of " + count + " rows", null);
      }
      int at = 0;
      for (Slot slot : slots) {
        take(slot, ByteBuffer.wrap(buffer, at, wanted - at).slice(), rowBytes);
        at += slot.field().bytes();
      }
      done += wanted / rowBytes;
    }
    for (Slot slot : slots) {
      if (slot.writer().isPresent()) {
        slot.writer().get().finish();
      }
    }
  }

  private static void take(Slot slot, ByteBuffer bytes, int rowBytes) throws IOException {
    if (slot.writer().isPresent()) {
      ColumnWriter writer = slot.writer().get();
      bytes.order(slot.field().order());
      int last = bytes.capacity() - slot.field().bytes();
      for (int at = 0; at <= last; at += rowBytes) {
        writer.add(slot.field().type().orElseThrow().read(bytes, at));
      }
    }
  }
}
