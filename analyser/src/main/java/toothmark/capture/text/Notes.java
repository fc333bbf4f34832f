package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import toothmark.capture.Reading;
import toothmark.capture.StatedLayout;

/** Collects what was understood and what is in doubt, in the order to show. */
final class Notes {

  private final List<Reading.Fact> facts = new ArrayList<>();
  private final List<String> doubts = new ArrayList<>();

  void fact(String label, String value) {
    facts.add(new Reading.Fact(label, value));
  }

  /** What the user stated. */
  void stated(StatedLayout layout) {
    if (!layout.inWords().isEmpty()) {
      fact("from the job sheet", String.join(", ", layout.inWords()));
    }
  }

  /** How the columns are understood. */
  void columns(List<ColumnPlan> plans) {
    fact("columns", plans.stream().map(Notes::text).collect(Collectors.joining("; ")));
  }

  private static String text(ColumnPlan plan) {
    String name = plan.name().isEmpty() ? "no name" : plan.name();
    String unit = plan.unit().isNone() ? "" : " in " + plan.unit().text();
    String role =
        switch (plan.role()) {
          case TIME -> " (time)";
          case PERIOD -> " (period)";
          case INDEX -> " (counts rows)";
          case SEGMENT -> " (segment)";
          case VALUE -> "";
          case LEFT_OUT -> " (left out)";
        };
    return name + unit + role;
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
