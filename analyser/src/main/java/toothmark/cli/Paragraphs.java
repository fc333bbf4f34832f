package toothmark.cli;

import java.io.PrintWriter;
import picocli.CommandLine.Model.CommandSpec;

/** Prints sentences, broken between words to the width of the screen. */
final class Paragraphs {

  private final PrintWriter out;
  private final int columns;

  private Paragraphs(PrintWriter out, int columns) {
    this.out = out;
    this.columns = columns;
  }

  static Paragraphs of(CommandSpec spec) {
    return new Paragraphs(spec.commandLine().getOut(), Screen.columns());
  }

  void say(String sentence) {
    StringBuilder line = new StringBuilder();
    for (String word : sentence.split(" ")) {
      if (line.length() > 0 && line.length() + 1 + word.length() > columns) {
        out.println(line);
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    out.println(line);
    out.flush();
  }

  /** A line of a table, as it is. */
  void row(String line) {
    out.println(line);
    out.flush();
  }
}
