package toothmark.desktop;

import java.util.ArrayDeque;
import java.util.Deque;

/** Steps that can be taken back and again; for one thread. */
final class History<T> {

  private static final int MOST = 200;

  private final Deque<T> back = new ArrayDeque<>();
  private final Deque<T> forth = new ArrayDeque<>();
  private T now;
  private Object lastMerge;

  History(T start) {
    now = start;
  }

  T now() {
    return now;
  }

  /**
   * Takes a step.
   *
   * @param merge steps in a row of the same mark, such as letters typed into one field, are one
   */
  void step(T next, Object merge) {
    if (next.equals(now)) {
      return;
    }
    if (!merge.equals(lastMerge)) {
      back.push(now);
      if (back.size() > MOST) {
        back.removeLast();
      }
    }
    lastMerge = merge;
    forth.clear();
    now = next;
  }

  boolean canUndo() {
    return !back.isEmpty();
  }

  boolean canRedo() {
    return !forth.isEmpty();
  }

  T undo() {
    if (canUndo()) {
      forth.push(now);
      now = back.pop();
      lastMerge = null;
    }
    return now;
  }

  T redo() {
    if (canRedo()) {
      back.push(now);
      now = forth.pop();
      lastMerge = null;
    }
    return now;
  }
}
