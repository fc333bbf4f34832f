package toothmark.cli;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import toothmark.report.VerdictText;

/** Prints lines on a terminal; colour only there, and never alone. */
final class Screen {

  private static final int USUAL_COLUMNS = 80;
  private static final int MOST_COLUMNS = 110;

  private Screen() {}

  /** How wide the screen is, from the shell's variable; a customary width where it does not say. */
  static int columns() {
    String columns = System.getenv("COLUMNS");
    try {
      return columns == null
          ? USUAL_COLUMNS
          : Math.min(MOST_COLUMNS, Integer.parseInt(columns.strip()));
    } catch (NumberFormatException e) {
      return USUAL_COLUMNS;
    }
  }

  static void print(CommandLine command, List<VerdictText.Line> lines) {
    Ansi ansi = command.getColorScheme().ansi();
    PrintWriter to = command.getOut();
    for (VerdictText.Line line : lines) {
      to.println(ansi.enabled() ? coloured(ansi, line) : line.plain());
    }
    to.flush();
  }

  private static String coloured(Ansi ansi, VerdictText.Line line) {
    String style =
        switch (line.role()) {
          case VERDICT -> "bold";
          case FAULT -> "fg(red),bold";
          case WATCH -> "fg(yellow)";
          case NOTE -> "fg(cyan)";
          case PATH -> "faint";
          case NEXT, PLAIN -> "";
        };
    String head = line.label().isEmpty() ? "" : line.paddedLabel();
    boolean paintsHead = !head.isBlank();
    return paintsHead
        ? paint(ansi, style, head) + line.text()
        : head + paint(ansi, style, line.text());
  }

  private static String paint(Ansi ansi, String style, String text) {
    if (style.isEmpty() || text.isEmpty() || !ansi.enabled()) {
      return text;
    }
    Ansi.IStyle[] styles = Ansi.Style.parse(style);
    return Ansi.Style.on(styles) + text + Ansi.Style.off(styles);
  }
}
