package toothmark.desktop;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;

/** A value that tells its listeners when it changes; for one thread. */
final class Watched<T> {

  private final List<Consumer<T>> listeners = new ArrayList<>();
  private T value;

  Watched(T value) {
    this.value = value;
  }

  T get() {
    return value;
  }

  /** Sets the value and tells everyone, unless it is equal to the one before. */
  void set(T next) {
    if (!Objects.equals(value, next)) {
      value = next;
      List.copyOf(listeners).forEach(l -> l.accept(next));
    }
  }

  /** Tells a listener of every change from now on. */
  void watch(Consumer<T> listener) {
    listeners.add(listener);
  }

  /** Tells a listener of the value now and of every change. */
  void follow(Consumer<T> listener) {
    watch(listener);
    listener.accept(value);
  }
}
