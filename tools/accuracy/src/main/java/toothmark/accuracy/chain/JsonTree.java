package toothmark.accuracy.chain;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A small JSON file in memory: maps, lists, numbers, texts. */
final class JsonTree {

  private final Object root;

  private JsonTree(Object root) {
    this.root = root;
  }

  static JsonTree read(Path file) throws IOException {
    try (JsonParser parser = new JsonFactory().createParser(file.toFile())) {
      parser.nextToken();
      return new JsonTree(value(parser));
    }
  }

  private static Object value(JsonParser parser) throws IOException {
    return switch (parser.currentToken()) {
      case START_OBJECT -> {
        Map<String, Object> map = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
          String key = parser.currentName();
          parser.nextToken();
          map.put(key, value(parser));
        }
        yield map;
      }
      case START_ARRAY -> {
        List<Object> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          list.add(value(parser));
        }
        yield list;
      }
      case VALUE_NUMBER_FLOAT, VALUE_NUMBER_INT -> parser.getDoubleValue();
      case VALUE_TRUE -> Boolean.TRUE;
      case VALUE_FALSE -> Boolean.FALSE;
      case VALUE_NULL -> null;
      default -> parser.getText();
    };
  }

  /** What lies at the end of a path of keys; empty when the path ends early or in null. */
  private Optional<Object> at(String... path) {
    Object here = root;
    for (String key : path) {
      here = here instanceof Map<?, ?> map ? map.get(key) : null;
    }
    return Optional.ofNullable(here);
  }

  Optional<Double> number(String... path) {
    return at(path).filter(Double.class::isInstance).map(Double.class::cast);
  }

  Optional<String> text(String... path) {
    return at(path).filter(String.class::isInstance).map(String.class::cast);
  }

  boolean isTrue(String... path) {
    return at(path).filter(Boolean.TRUE::equals).isPresent();
  }

  boolean has(String... path) {
    return at(path).isPresent();
  }

  /** The members of a list, each a tree; empty when there is none. */
  List<JsonTree> list(String... path) {
    return at(path)
        .filter(List.class::isInstance)
        .map(l -> ((List<?>) l).stream().map(JsonTree::new).toList())
        .orElse(List.of());
  }
}
