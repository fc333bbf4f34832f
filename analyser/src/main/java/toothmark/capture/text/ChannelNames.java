package toothmark.capture.text;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Names of channels: as written, numbered from 1 where there is none, and distinct. */
final class ChannelNames {

  private final List<String> names = new ArrayList<>();

  /**
   * Names the channels of some columns.
   *
   * @param columns indices of the columns, in order
   */
  ChannelNames(Layout layout, List<Integer> columns) {
    Set<String> taken = new HashSet<>();
    int number = 0;
    for (int c = 0; c < layout.columns().size(); c++) {
      ColumnPlan plan = layout.columns().get(c);
      if (plan.role() != Role.VALUE) {
        continue;
      }
      number++;
      String name = plan.name().isEmpty() ? String.valueOf(number) : plan.name();
      String distinct = name;
      for (int k = 2; !taken.add(distinct); k++) {
        distinct = name + " (" + k + ")";
      }
      if (columns.contains(c)) {
        names.add(distinct);
      }
    }
  }

  /** Name of the k-th of the columns. */
  String of(int k) {
    return names.get(k);
  }

  /** Name of a bit of the k-th of the columns, a bus. */
  String bit(int k, int bit) {
    return names.get(k) + "[" + bit + "]";
  }
}
