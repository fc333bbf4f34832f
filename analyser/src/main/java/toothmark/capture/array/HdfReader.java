package toothmark.capture.array;

import io.jhdf.HdfFile;
import io.jhdf.api.Attribute;
import io.jhdf.api.Dataset;
import io.jhdf.api.Group;
import io.jhdf.api.Node;
import io.jhdf.api.dataset.ChunkedDataset;
import io.jhdf.exceptions.HdfException;
import io.jhdf.object.datatype.EnumDataType;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import toothmark.capture.StatedColumn;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.ColumnWriter;

/**
 * Reads the arrays of an HDF5 file, slice by slice. Attributes give units and settings; scale and
 * offset are named as the NetCDF climate and forecast conventions (CF 1.11, 8.1) name them.
 */
final class HdfReader {

  /** The second names are those of a setting, and mean whole numbers only. */
  private static final List<String> SCALES = List.of("scale_factor", "scale");

  private static final List<String> OFFSETS = List.of("add_offset", "offset");
  private static final List<String> UNITS = List.of("units", "unit");

  private static final Set<String> GENERIC =
      Set.of("data", "values", "samples", "signal", "waveform", "raw", "y");

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
    boolean channel = group.getChildren().values().stream().anyMatch(HdfReader::isGeneric);
    settings(group, channel ? group.getName() : "");
    for (Node node : group.getChildren().values()) {
      if (node instanceof Group inner && !inner.getName().startsWith("#")) {
        read(inner);
      } else if (node instanceof Dataset data) {
        String name = name(data);
        settings(data, name);
        read(data, name);
      }
    }
  }

  /** A data set that is only called data goes by the name of the group that it is in. */
  private static String name(Dataset data) {
    return isGeneric(data) ? data.getParent().getName() : data.getName();
  }

  private static boolean isGeneric(Node node) {
    Group group = node.getParent();
    boolean inner = group != null && group.getParent() != null;
    return inner
        && node instanceof Dataset
        && GENERIC.contains(node.getName().toLowerCase(Locale.ROOT));
  }

  /** Attributes may be settings, of a channel where an owner is named. */
  private void settings(Node node, String owner) {
    for (String name : node.getAttributes().keySet()) {
      Object value = value(node, name);
      boolean scaling = SCALES.contains(name) || OFFSETS.contains(name);
      boolean taken = UNITS.contains(name) || scaling && value instanceof Number;
      if (taken && !owner.isEmpty()) {
        continue; // by the channel itself
      }
      if (value instanceof Number n) {
        into.setting(name, n.doubleValue(), owner);
      } else if (value instanceof String s) {
        into.setting(name, s, owner);
      }
    }
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

  private static StatedColumn about(Dataset data, String name) {
    Object unit = own(data, UNITS);
    StatedColumn about = StatedColumn.named(name, unit instanceof String s ? s : "");
    Class<?> type = data.getJavaType();
    boolean counts = type.isPrimitive() && type != float.class && type != double.class;
    OptionalDouble scale = number(own(data, counts ? SCALES : SCALES.subList(0, 1)));
    OptionalDouble offset = number(own(data, counts ? OFFSETS : OFFSETS.subList(0, 1)));
    return scale.isEmpty() && offset.isEmpty()
        ? about
        : about.scaled(scale.orElse(1), offset.orElse(0));
  }

  private static OptionalDouble number(Object value) {
    return value instanceof Number n ? OptionalDouble.of(n.doubleValue()) : OptionalDouble.empty();
  }

  /** The first attribute of some names that a data set has, or the group whose data it is. */
  private static Object own(Dataset data, List<String> names) {
    Object value = null;
    for (String name : names) {
      value = value == null ? value(data, name) : value;
      value = value == null && isGeneric(data) ? value(data.getParent(), name) : value;
    }
    return value;
  }

  private void read(Dataset data, String name) throws IOException {
    List<Long> axes = Arrays.stream(data.getDimensionsAsLong()).boxed().toList();
    Optional<Shape> shape = Shape.of(axes, false);
    Class<?> type = data.getJavaType();
    boolean numbers = type.isPrimitive() && type != char.class && type != boolean.class;
    numbers |= Number.class.isAssignableFrom(type); // a single one
    numbers |= data.getDataType() instanceof EnumDataType; // how truth values are written
    boolean text = value(data, "MATLAB_class") instanceof String s && s.equals("char");
    if (!numbers || text || data.isCompound()) {
      into.leftOut(name, "it holds no real numbers");
    } else if (shape.isEmpty()) {
      into.leftOut(name, "its shape is " + axes);
    } else if (axes.isEmpty()) {
      if (data.getData() instanceof Number n) {
        into.setting(name, n.doubleValue(), "");
      }
    } else if (into.mayHave(about(data, name), shape.get().columns())) {
      fill(data, shape.get(), into.start(about(data, name), shape.get().columns()));
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
