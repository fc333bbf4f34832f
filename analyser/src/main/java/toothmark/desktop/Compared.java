package toothmark.desktop;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import toothmark.chart.ComparisonFigures;
import toothmark.compare.Comparison;
import toothmark.examination.Examination;
import toothmark.report.ResultReader;

/**
 * Two captures against each other; neither need stay open.
 *
 * @param before what the earlier is called
 * @param after what the later is called
 * @param comparison what changed
 * @param figures both laid over each other
 */
record Compared(String before, String after, Comparison comparison, ComparisonFigures figures) {

  static Compared of(Side before, Side after) throws IOException {
    return new Compared(
        Titles.apart(before.file(), List.of(after.file())),
        Titles.apart(after.file(), List.of(before.file())),
        Comparison.of(ResultReader.of(before.examination), ResultReader.of(after.examination)),
        ComparisonFigures.of(before.examination, after.examination));
  }

  /** One of the two, its capture open. */
  record Side(Request request, Examination examination) {

    private Path file() {
      return request.capture();
    }
  }
}
