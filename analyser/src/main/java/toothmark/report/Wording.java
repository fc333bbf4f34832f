package toothmark.report;

import java.util.Locale;
import toothmark.receiver.SyncLoss;

/** Words of the results that stand for enum values. */
final class Wording {

  private Wording() {}

  /** The phase of a sync loss, as in the tables. */
  static String phase(SyncLoss.Phase phase) {
    return lower(phase);
  }

  /** An enum value in lower case. */
  static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
