package toothmark.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.units.Measured;
import toothmark.units.PlainNumber;

/** Fields of a JSON object; what is not known is {@code null}, never a guess. */
final class JsonFields {

  private final JsonGenerator json;

  JsonFields(JsonGenerator json) {
    this.json = json;
  }

  /** Writes an object under a name. */
  void object(String name, Body body) throws IOException {
    json.writeObjectFieldStart(name);
    body.write();
    json.writeEndObject();
  }

  /** Writes an object for each item of a list under a name. */
  <T> void objects(String name, Iterable<T> items, Item<T> body) throws IOException {
    json.writeArrayFieldStart(name);
    for (T item : items) {
      json.writeStartObject();
      body.write(item);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  void text(String name, String value) throws IOException {
    json.writeStringField(name, value);
  }

  void texts(String name, List<String> values) throws IOException {
    json.writeArrayFieldStart(name);
    for (String v : values) {
      json.writeString(v);
    }
    json.writeEndArray();
  }

  void wholes(String name, List<Integer> values) throws IOException {
    json.writeArrayFieldStart(name);
    for (int v : values) {
      json.writeNumber(v);
    }
    json.writeEndArray();
  }

  void nothing(String name) throws IOException {
    json.writeNullField(name);
  }

  void whole(String name, long value) throws IOException {
    json.writeNumberField(name, value);
  }

  /** A number, or null where it is not finite. */
  void number(String name, double value) throws IOException {
    json.writeFieldName(name);
    put(value);
  }

  void number(String name, OptionalDouble value) throws IOException {
    number(name, value.orElse(Double.NaN));
  }

  /** A value with its standard uncertainty, or null. */
  void measured(String name, Optional<Measured> value) throws IOException {
    if (value.isEmpty()) {
      nothing(name);
      return;
    }
    object(
        name,
        () -> {
          number("value", value.get().value());
          number("standard_uncertainty", value.get().standardUncertainty());
        });
  }

  private void put(double value) throws IOException {
    if (Double.isFinite(value)) {
      json.writeNumber(PlainNumber.significant(value));
    } else {
      json.writeNull();
    }
  }

  /** Writes the fields of an object. */
  interface Body {
    void write() throws IOException;
  }

  /** Writes the fields of an object that describes an item. */
  interface Item<T> {
    void write(T item) throws IOException;
  }
}
