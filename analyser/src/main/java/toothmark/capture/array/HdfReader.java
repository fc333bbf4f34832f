package toothmark.capture.array;

import io.jhdf.HdfFile;
import io.jhdf.api.Attribute;
import io.jhdf.api.Dataset;
import io.jhdf.api.Group;
import io.jhdf.api.Node;
import io.jhdf.api.dataset.ChunkedDataset;
import io.jhdf.exceptions.HdfException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.capture.StatedColumn;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.ColumnWriter;

/**
 * Reads the arrays of an HDF5 file, slice by slice. Attributes give units and settings; scale and
 * offset are named as the NetCDF climate and forecast conventions (CF 1.11, 8.1) name them.
 */
final class HdfReader {

  private static final String SCALE = "scale_factor";
  private static final String OFFSET = "add_offset";
  private static final int SUPERBLOCK = 96;
  private static final int NUMBERS_OF_A_SLICE = 1 << 16;

  private final ArrayInput in;
  private final Variables into;

  HdfReader(ArrayInput in, Variables into) {
    this.in = in;
    this.into = into;
  }

  void read() throws IOException, UnreadableCaptureException {
    checkLength();
    try {
      read(new HdfFile(in.file())); // not closed: the channel is the source's
    } catch (HdfException | IllegalArgumentException | IndexOutOfBoundsException e) {
      throw in.broken("the HDF5 file cannot be read (" + e.getMessage() + ")", e);
    }
  }

  /**
   * The superblock states the end of the file; the library reads on beyond it without a word.
   * Source: HDF5 file format specification 3.0, II.A.
   */
  private void checkLength() throws IOException, UnreadableCaptureException {
    byte[] head = in.head();
    int start = ArrayFormat.superblock(head);
    ByteBuffer b = ByteBuffer.wrap(Arrays.copyOfRange(head, start, start + SUPERBLOCK));
    int version = b.get(8);
    boolean wide = b.get(version < 2 ? 13 : 9) == Long.BYTES;
    long end = b.order(ByteOrder.LITTLE_ENDIAN).getLong(version >= 2 ? 28 : 40 + 4 * version);
    if (wide && in.file().size() < end) {
      throw in.broken(
          "the HDF5 file should have " + end + " bytes, but has " + in.file().size(), null);
    }
  }

  private void read(Group group) throws IOException {
    settings(group);
    for (Node node : group.getChildren().values()) {
      if (node instanceof Group inner && !inner.getName().startsWith("#")) {
        read(inner);
      } else if (node instanceof Dataset data) {
        settings(data);
        read(data);
      }
    }
  }

  private void settings(Node node) {
    for (String name : node.getAttributes().keySet()) {
      if (!name.equals(SCALE) && !name.equals(OFFSET)) {
        number(node, name).ifPresent(v -> into.setting(name, v));
      }
    }
  }

  private static OptionalDouble number(Node node, String name) {
    Object value = value(node, name);
    return value instanceof Number n ? OptionalDouble.of(n.doubleValue()) : OptionalDouble.empty();
  }

  /** The only value of an attribute; null where there is none. */
  private static Object value(Node node, String name) {
    Attribute attribute = node.getAttributes().get(name);
    if (attribute == null || attribute.isEmpty() || attribute.getSize() != 1) {
      return null;
    }
    Object value = attribute.getData();
    while (value != null && value.getClass().isArray()) {
      value = java.lang.reflect.Array.get(value, 0);
    }
    return value;
  }

  private static StatedColumn about(Dataset data) {
    Object unit = value(data, "units") == null ? value(data, "unit") : value(data, "units");
    StatedColumn about = StatedColumn.named(data.getName(), unit instanceof String s ? s : "");
    OptionalDouble scale = number(data, SCALE);
    OptionalDouble offset = number(data, OFFSET);
    return scale.isEmpty() && offset.isEmpty()
        ? about
        : about.scaled(scale.orElse(1), offset.orElse(0));
  }

  private void read(Dataset data) throws IOException {
    List<Long> axes = Arrays.stream(data.getDimensionsAsLong()).boxed().toList();
    Optional<Shape> shape = Shape.of(axes, false);
    Class<?> type = data.getJavaType();
    boolean numbers = type.isPrimitive() && type != char.class && type != boolean.class;
    boolean text = value(data, "MATLAB_class") instanceof String s && s.equals("char");
    if (!numbers || text || data.isCompound()) {
      into.leftOut(data.getName(), "it holds no real numbers");
    } else if (shape.isEmpty()) {
      into.leftOut(data.getName(), "its shape is " + axes);
    } else if (axes.isEmpty()) {
      into.setting(data.getName(), ((Number) data.getData()).doubleValue());
    } else if (into.mayHave(about(data), shape.get().columns())) {
      fill(data, shape.get(), into.start(about(data), shape.get().columns()));
    }
  }

  /** Reads slices across the longest axis, each of whole chunks. */
  private void fill(Dataset data, Shape shape, List<ColumnWriter> writers) throws IOException {
    long[] axes = data.getDimensionsAsLong();
    int time = 0;
    for (int a = 1; a < axes.length; a++) {
      time = axes[a] > axes[time] ? a : time;
    }
    int chunk = data instanceof ChunkedDataset c ? c.getChunkDimensions()[time] : 1;
    int rows = Math.max(1, NUMBERS_OF_A_SLICE / shape.columns() / chunk) * chunk;
    long[] offset = new long[axes.length];
    for (; offset[time] < axes[time]; offset[time] += rows) {
      int[] part = Arrays.stream(axes).mapToInt(n -> (int) n).toArray();
      part[time] = (int) Math.min(rows, axes[time] - offset[time]);
      add(new Slice(data.getData(offset, part)), !shape.byColumn(), part[time], writers);
      in.advanced(Math.round((double) in.file().size() * offset[time] / axes[time]));
    }
    for (ColumnWriter writer : writers) {
      writer.finish();
    }
  }

  private static void add(Slice slice, boolean byRow, int rows, List<ColumnWriter> writers)
      throws IOException {
    int columns = writers.size();
    for (int c = 0; c < columns; c++) {
      int first = byRow ? c : c * rows;
      int step = byRow ? columns : 1;
      for (int r = 0; r < rows; r++) {
        writers.get(c).add(slice.at(first + r * step));
      }
    }
  }
}
