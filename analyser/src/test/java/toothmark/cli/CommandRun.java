package toothmark.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/** One call of the command line, with what it returned and printed. */
record CommandRun(int code, String out, String err) {

  static CommandRun of(Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] words = new String[arguments.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = arguments[i].toString();
    }
    int code =
        Main.commandLine(words)
            .setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true))
            .execute(words);
    return new CommandRun(code, out.toString(), err.toString());
  }
}
