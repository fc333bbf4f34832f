package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.List;
import org.junit.jupiter.api.Test;
import toothmark.chart.Lettering;

class TextLineTest {

  private static final TextRun LOOK = new TextRun("", Lettering.regular(10), Color.BLACK);

  @Test
  void breaksAtSpacesOnly() {
    double room = LOOK.saying("one two").width() + 0.1;
    assertThat(TextLine.broken(List.of(LOOK.saying("one two three\u202fm")), room))
        .extracting(TextLine::toString)
        .containsExactly("one two ", "three\u202fm");
  }

  @Test
  void breaksAWordThatIsWiderThanALine() {
    double room = LOOK.saying("aaaa").width() + 0.1;
    assertThat(TextLine.broken(List.of(LOOK.saying("aaaaaaaaaa")), room))
        .extracting(TextLine::toString)
        .containsExactly("aaaa", "aaaa", "aa");
  }

  @Test
  void hangsAFullStopOver() {
    double room = LOOK.saying("see teeth.csv").width() + 0.1;
    assertThat(TextLine.broken(List.of(LOOK.saying("see teeth.csv"), LOOK.saying(".")), room))
        .extracting(TextLine::toString)
        .containsExactly("see teeth.csv.");
  }
}
