package toothmark.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** The page that holds every suite's section, each between two markers. */
final class AccuracyPage {

  private static final String HEAD =
      """
      # Accuracy

      Measured on generated captures. Their truth comes from the simulated machine (`tools/simulator`), which shares no code with the analyser, never from the signal. Each section is made by the command under its heading; the same command gives the same figures. A share that was never met in n trials is written `< 1/n`.

      A case named below can be run again alone, with everything printed, and written to disk for the command line:

          tools/measure-accuracy --case strays/36-1_20+5/3 --dump /tmp/case
          tools/toothmark examine /tmp/case/capture.csv --job /tmp/case/job.toml

      """;

  private AccuracyPage() {}

  /** Puts a section in its place, or at the end when it has none yet. */
  static void replace(Path page, String name, String markdown) throws IOException {
    String old = Files.exists(page) ? Files.readString(page) : HEAD;
    String begin = "<!-- " + name + ": begin -->\n";
    String end = "<!-- " + name + ": end -->\n";
    String section = begin + "\n" + markdown.strip() + "\n\n" + end;
    int from = old.indexOf(begin);
    int to = old.indexOf(end);
    String fresh =
        from < 0 || to < from
            ? old.stripTrailing() + "\n\n" + section
            : old.substring(0, from) + section + old.substring(to + end.length());
    Files.createDirectories(page.getParent());
    Path draft = page.resolveSibling(page.getFileName() + ".new");
    Files.writeString(draft, fresh);
    Files.move(draft, page, StandardCopyOption.REPLACE_EXISTING);
  }
}
