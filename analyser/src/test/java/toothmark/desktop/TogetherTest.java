package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import toothmark.units.Interval;

class TogetherTest {

  private final Together together = new Together();
  private final DeskModel first = window(0, 10);
  private final DeskModel second = window(100, 104);
  private boolean ticked;

  private DeskModel window(double start, double end) {
    DeskModel model = new DeskModel(Runnable::run, Runnable::run, Runnable::run);
    model.view.set(Optional.of(TimeView.all(new Interval(start, end))));
    together.add(model, on -> ticked = on);
    return model;
  }

  private static void show(DeskModel model, double start, double end) {
    model.view.set(model.view.get().map(v -> v.showing(new Interval(start, end))));
  }

  private static Interval shown(DeskModel model) {
    return model.view.get().orElseThrow().shown();
  }

  @Test
  void eachMovesAndZoomsAsTheOtherFromWhereItStandsWhileThatIsWanted() {
    show(first, 4, 6);
    show(second, 101, 102);
    assertThat(shown(first)).isEqualTo(new Interval(4, 6));
    together.toggle();
    assertThat(ticked).isTrue();
    show(first, 4.5, 6.5);
    assertThat(shown(second)).isEqualTo(new Interval(101.5, 102.5));
    show(second, 101.75, 102.25);
    assertThat(shown(first)).isEqualTo(new Interval(5, 6));
    first.view.set(first.view.get().map(v -> TimeView.all(v.whole())));
    assertThat(second.view.get().orElseThrow().isAll()).isTrue();
    together.toggle();
    show(first, 1, 2);
    assertThat(second.view.get().orElseThrow().isAll()).isTrue();
  }

  @Test
  void anotherCaptureOrAClosedWindowMovesNone() {
    together.toggle();
    first.view.set(Optional.of(TimeView.all(new Interval(0, 50))));
    show(second, 101, 102);
    Interval before = shown(first);
    together.remove(second);
    show(second, 102, 103);
    assertThat(shown(first)).isEqualTo(before);
    show(first, 1, 2);
    assertThat(shown(second)).isEqualTo(new Interval(102, 103));
  }
}
