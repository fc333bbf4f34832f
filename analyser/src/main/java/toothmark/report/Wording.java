package toothmark.report;

import java.util.Locale;
import toothmark.receiver.SyncLoss;
import toothmark.timing.GapShape;

/** Words of the results that stand for enum values. */
final class Wording {

  private Wording() {}

  /** The phase of a sync loss, as in the tables. */
  static String phase(SyncLoss.Phase phase) {
    return lower(phase);
  }

  /** How the gap changes with speed. */
  static String of(GapShape shape) {
    return switch (shape) {
      case CONSTANT -> "the same at all speeds";
      case DELAY -> "in proportion, as of a fixed delay";
      case FILTER_LAG -> "less and less, as of a filter";
      case THRESHOLD -> "largest at low speed, as of a threshold";
      case ACCELERATION -> "only while the speed changes";
      case STEP -> "a step at one speed";
    };
  }

  /** An enum value in lower case. */
  static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
