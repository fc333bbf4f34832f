package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Reading;

/** Collects what was understood and what is in doubt, in the order to show. */
final class Notes {

  private final List<Reading.Fact> facts = new ArrayList<>();
  private final List<String> doubts = new ArrayList<>();

  void fact(String label, String value) {
    facts.add(new Reading.Fact(label, value));
  }

  void doubt(String sentence) {
    if (!doubts.contains(sentence)) {
      doubts.add(sentence);
    }
  }

  Reading reading(String format) {
    return new Reading(format, facts, doubts);
  }
}
