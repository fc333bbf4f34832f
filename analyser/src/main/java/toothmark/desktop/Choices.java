package toothmark.desktop;

import java.util.Arrays;
import toothmark.desktop.JobDraft.Field;

/** What can be chosen in a field, in words for the person, and as the job sheet writes it. */
final class Choices {

  private Choices() {}

  static String[] of(Field field) {
    String auto = Phrases.of("job.auto");
    return switch (field) {
      case KIND -> new String[] {auto, word(field, "variable-reluctance"), word(field, "hall")};
      case EDGE -> new String[] {auto, word(field, "falling"), word(field, "rising")};
      default -> new String[] {auto};
    };
  }

  /** The word for a value; an empty one is found from the capture. */
  static String word(Field field, String value) {
    if (value.isEmpty()) {
      return Phrases.of("job.auto");
    }
    return field == Field.KIND || field == Field.EDGE ? Phrases.of("choice." + value) : value;
  }

  /** The value of a word. */
  static String value(Field field, String word) {
    if (word.equals(Phrases.of("job.auto"))) {
      return "";
    }
    if (field != Field.KIND && field != Field.EDGE) {
      return word;
    }
    return Arrays.stream(new String[] {"variable-reluctance", "hall", "falling", "rising"})
        .filter(v -> word.equals(word(field, v)))
        .findFirst()
        .orElse(word);
  }
}
