package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import toothmark.report.TapeSheets.Paper;
import toothmark.timing.DegreeTape;

class TapeSheetsTest {

  private static final Pattern UPRIGHT = Pattern.compile("d=\"M([0-9.]+) ([0-9.]+)[VL]");

  /** A whole turn of a 6 inch pulley is pi times 152.4 mm long, at 100 units each millimetre. */
  @Test
  void marksLieAtTrueScale() {
    DegreeTape tape = new DegreeTape(152.4, 0, 180);
    TapeSheets sheets = TapeSheets.of(tape, Paper.A4);
    String svg = sheets.svg(0);

    assertThat(sheets.sheets()).isEqualTo(1);
    assertThat(svg).startsWith("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"297.0mm\"");
    assertThat(svg).contains("viewBox=\"0 0 29700 21000\"").contains(">TDC<").contains(">180<");
    List<Double> marks =
        UPRIGHT.matcher(svg).results().filter(r -> at(r, 2) == 5400).map(r -> at(r, 1)).toList();
    assertThat(marks).hasSizeGreaterThan(180);
    assertThat(marks.get(90) - marks.get(0)).isCloseTo(90 * 132.994, within(0.5));
  }

  /** 360 degrees of 178 mm are 559 mm: three strips, each beginning where the last one ended. */
  @Test
  void aLongTapeIsCutIntoStrips() {
    String svg = TapeSheets.of(new DegreeTape(178, 0, 360), Paper.LETTER).svg(0);

    assertThat(svg.split("lay this ", -1)).hasSize(3);
    assertThat(svg).contains("This ruler must measure 100 mm.");
  }

  @Test
  void manyStripsTakeSeveralSheets() {
    TapeSheets sheets = TapeSheets.of(new DegreeTape(600, 0, 360), Paper.A4);

    assertThat(sheets.sheets()).isEqualTo(2);
    assertThat(sheets.svg(1)).contains("sheet 2 of 2").contains(">360<");
  }

  @Test
  void aDegreeLongerThanThePaperIsRefused() {
    assertThatThrownBy(() -> TapeSheets.of(new DegreeTape(40000, 0, 10), Paper.A4))
        .hasMessage("one degree of a pulley of 40000.0 mm is longer than the paper");
  }

  private static double at(MatchResult r, int group) {
    return Double.parseDouble(r.group(group));
  }
}
