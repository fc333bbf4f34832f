package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import toothmark.units.Interval;

class TimeViewTest {

  private static final TimeView ALL = TimeView.all(new Interval(-1, 9));

  @Test
  void zoomingKeepsTheInstantInItsPlace() {
    TimeView v = ALL.zoomed(0.5, 1).zoomed(0.5, 1);
    // 1 s stood at a fifth of the view of -1 to 9 s, and still does
    assertThat(v.shown().seconds()).isCloseTo(2.5, within(1e-12));
    assertThat((1 - v.shown().startInclusive()) / 2.5).isCloseTo(0.2, within(1e-12));
  }

  @Test
  void zoomingOutStopsAtTheWholeCapture() {
    assertThat(ALL.zoomed(0.1, 3).zoomed(1000, 3).isAll()).isTrue();
  }

  @Test
  void zoomingInStopsWhereInstantsAreNotToldApart() {
    TimeView v = ALL;
    for (int i = 0; i < 200; i++) {
      v = v.zoomed(0.5, 4);
    }
    assertThat(v.shown().seconds()).isBetween(1e-6, 2.1e-6);
    assertThat(v.shown().startInclusive()).isLessThanOrEqualTo(4);
    assertThat(v.shown().endExclusive()).isGreaterThanOrEqualTo(4);
  }

  @Test
  void panningStopsAtTheEnds() {
    TimeView v = ALL.showing(new Interval(2, 4));
    assertThat(v.panned(0.5).shown()).isEqualTo(new Interval(3, 5));
    assertThat(v.panned(-1e9).shown()).isEqualTo(new Interval(-1, 1));
    assertThat(v.panned(1e9).shown()).isEqualTo(new Interval(7, 9));
  }

  @Test
  void aViewAroundAnInstantNearTheEndIsPushedBack() {
    TimeView v = ALL.showing(new Interval(2, 4));
    assertThat(v.around(8.9).shown()).isEqualTo(new Interval(7, 9));
    assertThat(v.around(5).shown()).isEqualTo(new Interval(4, 6));
  }

  @Test
  void aPictureBesideKeepsWhatItShowsWhereTheViewIsSeenOnIt() {
    TimeView v = ALL.showing(new Interval(2, 4));
    assertThat(v.beside(new Interval(1, 8))).isEqualTo(new Interval(1, 8));
    assertThat(v.beside(new Interval(3, 8))).isEqualTo(new Interval(2, 7));
    assertThat(v.beside(new Interval(-1, 3))).isEqualTo(new Interval(0, 4));
    assertThat(v.beside(new Interval(6, 7))).isEqualTo(new Interval(2, 4));
    assertThat(ALL.beside(new Interval(6, 7))).isEqualTo(ALL.whole());
    TimeView narrow = ALL.showing(new Interval(4, 4.1));
    assertThat(narrow.beside(ALL.whole()).seconds()).isBetween(1.0, 4.0);
    assertThat(narrow.beside(ALL.whole()).contains(4.05)).isTrue();
  }
}
