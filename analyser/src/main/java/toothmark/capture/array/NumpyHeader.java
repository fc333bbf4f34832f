package toothmark.capture.array;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import toothmark.capture.NumberType;

/**
 * The header of a NumPy array: element type or fields, order and shape.
 *
 * <p>Source: R. Kern, NEP 1: A simple file format for NumPy arrays (2007), and the format versions
 * 2.0 and 3.0 in the reference of {@code numpy.lib.format}.
 *
 * @param fields of one element; a plain type is one field without a name
 * @param columnsFirst whether the first index runs fastest (FORTRAN order)
 * @param shape lengths of the axes; empty for a single number
 */
record NumpyHeader(List<Field> fields, boolean columnsFirst, List<Long> shape) {

  /** Bytes before the length of the header: the magic and the version. */
  static final int MAGIC_BYTES = 8;

  private static final String MAGIC = "\u0093NUMPY";
  private static final String QUOTED = "['\"]([^'\"]*)['\"]";
  private static final Pattern ORDER = Pattern.compile("'fortran_order':\\s*(True|False)");
  private static final Pattern SHAPE = Pattern.compile("'shape':\\s*\\(([0-9L, ]*)\\)");
  private static final Pattern PLAIN = Pattern.compile("'descr':\\s*" + QUOTED);
  private static final Pattern LIST = Pattern.compile("'descr':\\s*\\[(.*?)]\\s*[,}]");
  private static final Pattern FIELD =
      Pattern.compile("\\(\\s*" + QUOTED + "\\s*,\\s*" + QUOTED + "\\s*\\)");
  private static final Pattern TYPE = Pattern.compile("([<>|=])([biufcSUV])([0-9]+)");

  /**
   * A field of an element.
   *
   * @param name empty for the only one
   * @param type empty where it is not a real number; its bytes are passed over
   * @param bytes its length
   * @param order of its bytes
   */
  record Field(String name, Optional<NumberType> type, int bytes, ByteOrder order) {}

  /** Whether bytes begin as an array does. */
  static boolean looksLike(byte[] bytes, int at) {
    return ArrayFormat.starts(bytes, at, MAGIC);
  }

  /** How many bytes state the length of the header, for a version of the format. */
  static int lengthBytes(int majorVersion) {
    return majorVersion == 1 ? 2 : 4;
  }

  /** The length of the header that follows. */
  static long length(byte[] bytes) {
    ByteBuffer b = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    return bytes.length == 2 ? b.getShort() & 0xffff : b.getInt() & 0xffff_ffffL;
  }

  /**
   * Understands a header.
   *
   * @param bytes the Python literal
   * @return empty where it makes no sense
   */
  static Optional<NumpyHeader> of(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Matcher order = ORDER.matcher(text);
    Matcher shape = SHAPE.matcher(text);
    List<Field> fields = fields(text);
    if (fields.isEmpty() || !order.find() || !shape.find()) {
      return Optional.empty();
    }
    List<Long> axes = new ArrayList<>();
    for (String axis : shape.group(1).replace("L", "").split(",")) {
      if (!axis.isBlank()) {
        axes.add(Long.parseLong(axis.strip()));
      }
    }
    return Optional.of(new NumpyHeader(fields, order.group(1).equals("True"), axes));
  }

  private static List<Field> fields(String text) {
    List<Field> fields = new ArrayList<>();
    Matcher plain = PLAIN.matcher(text);
    Matcher list = LIST.matcher(text);
    if (plain.find()) {
      field("", plain.group(1)).ifPresent(fields::add);
    } else if (list.find()) {
      Matcher field = FIELD.matcher(list.group(1));
      int end = 0;
      while (field.find()) {
        Optional<Field> known = field(field.group(1), field.group(2));
        boolean adjoins = list.group(1).substring(end, field.start()).matches("[\\s,]*");
        if (known.isEmpty() || !adjoins) {
          return List.of();
        }
        fields.add(known.get());
        end = field.end();
      }
      if (!list.group(1).substring(end).matches("[\\s,]*")) { // a field of several numbers
        return List.of();
      }
    }
    return fields;
  }

  private static Optional<Field> field(String name, String code) {
    Matcher m = TYPE.matcher(code);
    if (!m.matches()) {
      return Optional.empty();
    }
    int bytes = Integer.parseInt(m.group(3)) * (m.group(2).equals("U") ? 4 : 1);
    String word =
        switch (m.group(2)) {
          case "i" -> "int" + 8 * bytes;
          case "u", "b" -> "uint" + 8 * bytes;
          case "f" -> "float" + 8 * bytes;
          default -> "";
        };
    ByteOrder order = m.group(1).equals(">") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    return Optional.of(new Field(name, NumberType.named(word), bytes, order));
  }

  /** Length of one element. */
  int elementBytes() {
    return fields.stream().mapToInt(Field::bytes).sum();
  }
}
