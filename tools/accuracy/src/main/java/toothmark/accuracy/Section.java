package toothmark.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** One suite's part of the page, while it is being written. */
public final class Section {

  /**
   * A case that went badly.
   *
   * @param name of the case
   * @param badness the larger the worse, comparable within one study
   * @param what went wrong, a few words
   */
  public record Worst(CaseName name, double badness, String what) {}

  static final int WORST_OF_A_STUDY = 8;

  private final Suite suite;
  private final String command;
  private final Path folder;
  private final int worstListed;
  private final StringBuilder body = new StringBuilder();
  private final Table targets = new Table("aim", "bound", "measured", "held");

  private boolean hasTargets;

  Section(Suite suite, String command, Path folder, int worstListed) {
    this.suite = suite;
    this.command = command;
    this.folder = folder;
    this.worstListed = worstListed;
  }

  /**
   * Begins a study.
   *
   * @param title its heading
   * @param text what was done, a paragraph
   */
  public void study(String title, String text) {
    body.append("### ").append(title).append("\n\n").append(text.strip()).append("\n\n");
  }

  /**
   * Adds a table.
   *
   * @param table complete
   */
  public void table(Table table) {
    body.append(table).append('\n');
  }

  /**
   * Adds a paragraph.
   *
   * @param text of it
   */
  public void paragraph(String text) {
    body.append(text.strip()).append("\n\n");
  }

  /**
   * Sets an aim against what was measured.
   *
   * @param aim what is asked for
   * @param bound within which
   * @param measured what came
   * @param held whether it is within the bound
   */
  public void target(String aim, String bound, String measured, Held held) {
    targets.row(aim, bound, measured, held == Held.YES ? "yes" : "**no**");
    hasTargets = true;
  }

  /** Whether an aim was reached. */
  public enum Held {
    /** It was. */
    YES,
    /** It was not. */
    NO;

    /**
     * From a comparison.
     *
     * @param within whether the measured figure is within its bound
     * @return YES when it is
     */
    public static Held when(boolean within) {
      return within ? YES : NO;
    }
  }

  /**
   * Draws a chart into the folder of pictures and shows it.
   *
   * @param chart what to draw
   * @param fileName without its suffix
   */
  public void chart(LineChart chart, String fileName) {
    try {
      chart.write(folder.resolve("pictures").resolve(fileName + ".svg"));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    body.append("![").append(chart.title()).append("](pictures/").append(fileName);
    body.append(".svg)\n\n");
  }

  /**
   * Lists the worst cases of a study.
   *
   * @param cases those that went badly, in any order
   */
  public void worst(List<Worst> cases) {
    List<Worst> sorted = new ArrayList<>(cases);
    sorted.sort(
        Comparator.comparingDouble(Worst::badness)
            .reversed()
            .thenComparing(w -> w.name().toString()));
    if (sorted.isEmpty()) {
      return;
    }
    body.append("Worst cases:\n\n");
    for (Worst w : sorted.subList(0, Math.min(worstListed, sorted.size()))) {
      body.append("- `").append(w.name()).append("`: ").append(w.what()).append('\n');
    }
    body.append('\n');
  }

  String markdown() {
    StringBuilder out = new StringBuilder("## " + suite.title() + "\n\n");
    out.append(suite.introduction().strip()).append("\n\n    ").append(command).append("\n\n");
    if (hasTargets) {
      out.append(targets).append('\n');
    }
    return out.append(body).toString();
  }
}
