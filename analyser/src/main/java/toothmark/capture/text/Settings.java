package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What the preamble states: one list of values for each key, in the order of the channels. */
final class Settings {

  /** What a preamble can state. */
  enum Key {
    INTERVAL("sampling interval"),
    RATE("sampling rate"),
    START("start"),
    POINTS("number of points"),
    SCALE("scale"),
    OFFSET("offset"),
    PROBE("probe factor"),
    CLOCK("counter clock"),
    UNIT("unit"),
    TIME_UNIT("time unit");

    final String text;

    Key(String text) {
      this.text = text;
    }
  }

  /**
   * A stated value.
   *
   * @param number in the base unit of {@code unit}; null for the unit keys
   * @param unit as stated; {@link Unit#NONE} when not
   * @param line line of the file, from 1
   */
  record Value(BigDecimal number, Unit unit, int line) {}

  private final Map<Key, List<Value>> values = new EnumMap<>(Key.class);

  void put(Key key, List<Value> stated) {
    values.putIfAbsent(key, List.copyOf(stated));
  }

  /** All values of a key; empty when it is not stated. */
  List<Value> all(Key key) {
    return values.getOrDefault(key, List.of());
  }

  /** The first value of a key, or null. */
  Value first(Key key) {
    List<Value> all = all(key);
    return all.isEmpty() ? null : all.get(0);
  }

  /** The value of a key for a channel: its own, or the only one; null when not stated. */
  Value of(Key key, int channel) {
    List<Value> all = all(key);
    if (all.size() == 1) {
      return all.get(0);
    }
    return channel < all.size() ? all.get(channel) : null;
  }

  List<Key> stated() {
    return new ArrayList<>(values.keySet());
  }
}
