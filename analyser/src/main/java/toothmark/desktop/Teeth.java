package toothmark.desktop;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** Finds teeth by time and by number. */
final class Teeth {

  private Teeth() {}

  /** Index of the first event not before an instant. */
  static int firstFrom(ToothEvents teeth, double timeSeconds) {
    int low = 0;
    int high = teeth.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (teeth.time(middle) < timeSeconds) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Index of the event nearest to an instant. */
  static OptionalInt nearest(ToothEvents teeth, double timeSeconds) {
    int after = firstFrom(teeth, timeSeconds);
    if (teeth.size() == 0) {
      return OptionalInt.empty();
    }
    if (after == teeth.size()) {
      return OptionalInt.of(after - 1);
    }
    boolean before =
        after > 0 && timeSeconds - teeth.time(after - 1) < teeth.time(after) - timeSeconds;
    return OptionalInt.of(before ? after - 1 : after);
  }

  /** When the next tooth passes after an instant, or the last before it; strays are none. */
  static OptionalDouble passAfter(ToothEvents teeth, double timeSeconds, int direction) {
    int i = firstFrom(teeth, timeSeconds);
    i = direction < 0 ? i - 1 : i < teeth.size() && teeth.time(i) == timeSeconds ? i + 1 : i;
    while (i >= 0 && i < teeth.size() && teeth.kind(i) == ToothKind.STRAY) {
      i += direction;
    }
    return i >= 0 && i < teeth.size() ? OptionalDouble.of(teeth.time(i)) : OptionalDouble.empty();
  }

  /** When a tooth passes, as near as can be to an instant. */
  static OptionalDouble passNearest(ToothEvents teeth, int tooth, double timeSeconds) {
    OptionalInt i = indexNearest(teeth, tooth, timeSeconds);
    return i.isPresent() ? OptionalDouble.of(teeth.time(i.getAsInt())) : OptionalDouble.empty();
  }

  /** Index of the pass of a tooth, seen or missing, that is nearest to an instant. */
  static OptionalInt indexNearest(ToothEvents teeth, int tooth, double timeSeconds) {
    int after = firstFrom(teeth, timeSeconds);
    int before = after - 1;
    while (after < teeth.size() && !is(teeth, after, tooth)) {
      after++;
    }
    while (before >= 0 && !is(teeth, before, tooth)) {
      before--;
    }
    if (after == teeth.size()) {
      return before < 0 ? OptionalInt.empty() : OptionalInt.of(before);
    }
    boolean nearer =
        before >= 0 && timeSeconds - teeth.time(before) < teeth.time(after) - timeSeconds;
    return OptionalInt.of(nearer ? before : after);
  }

  static boolean is(ToothEvents teeth, int i, int tooth) {
    return teeth.kind(i) != ToothKind.STRAY && teeth.tooth(i) == tooth;
  }
}
