package toothmark.desktop;

import java.io.IOException;
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
        before.name(),
        after.name(),
        Comparison.of(ResultReader.of(before.examination), ResultReader.of(after.examination)),
        ComparisonFigures.of(before.examination, after.examination));
  }

  /** One of the two, its capture open. */
  record Side(Request request, Examination examination) {

    /** Captures are often called alike, and told apart by their folders. */
    private String name() {
      var path = request.capture().toAbsolutePath();
      int from = Math.max(0, path.getNameCount() - 2);
      return path.subpath(from, path.getNameCount()).toString();
    }
  }
}
