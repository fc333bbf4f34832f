package toothmark.desktop;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;

/**
 * A coil as it is being typed.
 *
 * @param place which of the coils that were opened it is, from 0; empty for a new one
 */
record CoilDraft(String name, String channel, String cylinders, String signal, OptionalInt place) {

  /** A new coil. */
  CoilDraft(String name, String channel, String cylinders, String signal) {
    this(name, channel, cylinders, signal, OptionalInt.empty());
  }

  CoilDraft on(String other) {
    return new CoilDraft(name, other, cylinders, signal, place);
  }

  /** Its keys and what is typed for them. */
  Map<String, String> keys() {
    Map<String, String> keys = new LinkedHashMap<>();
    keys.put("name", Form.TEXT.toml(name));
    keys.put("channel", Form.TEXT.toml(channel));
    keys.put("cylinders", Form.WHOLE_LIST.toml(cylinders));
    keys.put("signal", Form.TEXT.toml(signal));
    return keys;
  }

  /** What it is called: by its place among the coils, from 0, where it has no name. */
  String name(int at) {
    return name.isBlank() ? nameAt(at) : name;
  }

  /** What a coil without a name is called. */
  static String nameAt(int place) {
    return Phrases.of("job.coil", Integer.toString(place + 1));
  }
}
