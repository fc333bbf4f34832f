package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import toothmark.findings.Picture;
import toothmark.units.Interval;

class FiguresTest {

  private final Figures full = Figures.of(SampleRun.full(), Ink.LIGHT);
  private final Figures empty = Figures.of(SampleRun.undecodable(), Ink.LIGHT);

  @ParameterizedTest
  @EnumSource(Picture.class)
  void drawsEveryPictureWithAQuestionAndAnAnswer(Picture picture) {
    Figure figure = full.draw(picture).orElseThrow();
    assertThat(figure.question()).endsWith("?");
    assertThat(figure.answer()).endsWith(".");
  }

  @ParameterizedTest
  @EnumSource(value = Picture.class, mode = EnumSource.Mode.EXCLUDE, names = "WAVEFORM")
  void drawsNothingWhereThereIsNothingToShow(Picture picture) {
    assertThat(empty.draw(picture)).isEmpty();
  }

  @Test
  void showsTheSignalEvenWhereNothingCouldBeDecoded() {
    assertThat(empty.draw(Picture.WAVEFORM)).isPresent();
    assertThat(empty.overview()).isEmpty();
  }

  @Test
  void drawsNoExcerptOutsideTheCapture() {
    assertThat(full.waveform(new Interval(99, 99))).isEmpty();
  }

  @Test
  void answersWithTheFiguresOfTheExamination() {
    assertThat(answer(Picture.WHEEL))
        .isEqualTo(
            "Yes: tooth 11 passes 0.80° late with a signal of 72\u202f%. "
                + "The others lie within 0.02°.");
    assertThat(answer(Picture.ADVANCE))
        .isEqualTo(
            "No: sparks come 2.604\u00a0±\u00a00.061° later at all speeds, "
                + "and 100.3\u00a0±\u00a03.7\u202fµs late.");
    assertThat(answer(Picture.SYNC))
        .isEqualTo(
            "The receiver lost its count 9 times while the engine ran and never while it"
                + " was cranked.");
    assertThat(answer(Picture.TOOTH_PERIOD))
        .isEqualTo("No: 9 steps span a missing tooth and 18 steps begin or end at a stray edge.");
    assertThat(answer(Picture.ORDERS)).startsWith("Most at order 2, by ");
    assertThat(answer(Picture.ALIGNMENT))
        .isEqualTo("It is off by −2.598\u00a0±\u00a00.041°; sparks come that much late.");
  }

  @Test
  void saysWhatAnAdvanceIsCountedFromWhereThereIsNoMark() {
    Figure advance =
        Figures.of(SampleRun.withoutTdc(), Ink.LIGHT).draw(Picture.ADVANCE).orElseThrow();
    assertThat(advance.answer())
        .startsWith("No: sparks come ")
        .endsWith(
            "µs late. Against the setting that the controller is told, not against top dead centre.");
  }

  /** Colour alone would not tell them apart in print. */
  @ParameterizedTest
  @EnumSource(
      value = Picture.class,
      names = {"ADVANCE", "DWELL", "WAVEFORM"})
  void twoCoilsDifferInShape(Picture picture) {
    Plot plot = full.draw(picture).orElseThrow().chart().getPlot();
    List<XYPlot> parts =
        plot instanceof CombinedDomainXYPlot stack
            ? ((List<?>) stack.getSubplots()).stream().map(XYPlot.class::cast).toList()
            : List.of((XYPlot) plot);
    Set<Mark> marks =
        parts.stream()
            .flatMap(p -> IntStream.range(0, p.getRendererCount()).mapToObj(p::getRenderer))
            .map(r -> ((LayerRenderer) r).layer())
            .filter(l -> l instanceof MarksLayer m && !m.points().isEmpty())
            .map(l -> ((MarksLayer) l).mark())
            .collect(Collectors.toSet());
    assertThat(marks).contains(Mark.TRIANGLE, Mark.SQUARE);
  }

  @Test
  void laysTurnsAndCyclesOverEachOther() {
    String crank = SampleRun.full().roles().crank();
    // tooth 1 passes at the start of each of the turns 0 to 198
    assertThat(full.turns(crank, Fold.TURN, () -> false).orElseThrow().answer())
        .startsWith("All 198 turns ");
    assertThat(full.turns(crank, Fold.CYCLE, () -> false).orElseThrow().answer())
        .startsWith("All 99 cycles of 720° ");
    assertThat(empty.turns(crank, Fold.TURN, () -> false)).isEmpty();
  }

  @Test
  void overviewFollowsTheOrderOfThePage() {
    List<String> questions = full.overview().stream().map(Figure::question).toList();
    assertThat(questions)
        .containsExactly(
            "Is any tooth out of place or weak?",
            "How fast did the crank turn?",
            "Does the spark leave at the commanded angle?",
            "Does the wheel stand where the controller believes?",
            "How long do the coils charge, and for which share of the time?",
            "When is sync lost, and with what?",
            "Do the teeth come evenly?");
  }

  private String answer(Picture picture) {
    return full.draw(picture).orElseThrow().answer();
  }
}
