package toothmark.desktop;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Scrolls and zooms the traces of several windows together while that is wanted: each by as many
 * seconds and by the same factor as the one that is moved, from where it stands; on the window's
 * thread.
 */
final class Together {

  private final Map<DeskModel, Member> members = new LinkedHashMap<>();
  private boolean wanted;
  private boolean moving;

  /** What a window showed last, and what tells it whether it goes together with others. */
  private record Member(Optional<TimeView> view, Consumer<Boolean> told) {}

  /** Takes a window in, whose menu is told whether all go together. */
  void add(DeskModel model, Consumer<Boolean> told) {
    members.put(model, new Member(model.view.get(), told));
    model.view.watch(v -> moved(model, v));
    told.accept(wanted);
  }

  void remove(DeskModel model) {
    members.remove(model);
  }

  void toggle() {
    wanted = !wanted;
    members.values().forEach(m -> m.told().accept(wanted));
  }

  private void moved(DeskModel model, Optional<TimeView> next) {
    Member before = members.get(model);
    if (before == null) {
      return; // its window is closed
    }
    members.put(model, new Member(next, before.told()));
    boolean sameCapture = next.map(TimeView::whole).equals(before.view().map(TimeView::whole));
    if (wanted && !moving && next.isPresent() && sameCapture) {
      moving = true;
      for (DeskModel other : members.keySet().toArray(new DeskModel[0])) {
        if (other != model) {
          other.view.set(other.view.get().map(v -> v.movedAs(before.view().get(), next.get())));
        }
      }
      moving = false;
    }
  }
}
