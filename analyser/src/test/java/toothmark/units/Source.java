package toothmark.units;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The program's own source, for tests of what stands in it. */
public final class Source {

  private static final Path ROOT = Path.of("src/main/java/toothmark");
  private static final Pattern COMMENT = Pattern.compile("(?s:/\\*.*?\\*/)|(?m:^\\s*//.*$)");

  /** A text, or a character, which may be a quotation mark. */
  private static final Pattern LITERAL =
      Pattern.compile("'(?:[^'\\\\]|\\\\.[^']*)'|\"((?:[^\"\\\\]++|\\\\.)*+)\"");

  private Source() {}

  /** The files of a package, by name. */
  public static List<Path> files(String part) throws IOException {
    try (Stream<Path> files = Files.list(ROOT.resolve(part))) {
      return files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
    }
  }

  /** All files of a package, one after the other, without their comments. */
  public static String of(String part) throws IOException {
    StringBuilder all = new StringBuilder();
    for (Path file : files(part)) {
      all.append(of(file));
    }
    return all.toString();
  }

  /** A file without its comments. */
  public static String of(Path file) throws IOException {
    return COMMENT.matcher(Files.readString(file)).replaceAll("");
  }

  /** What stands between quotation marks. */
  public static Stream<String> literals(String source) {
    return LITERAL.matcher(source).results().map(m -> m.group(1)).filter(Objects::nonNull);
  }

  /** A source without some calls; each pattern ends with the opening bracket. */
  public static String without(String source, Pattern calls) {
    StringBuilder rest = new StringBuilder();
    Matcher m = calls.matcher(source);
    int from = 0;
    while (m.find(from)) {
      rest.append(source, from, m.start());
      from = end(source, m.end());
    }
    return rest.append(source.substring(from)).toString();
  }

  /** What some calls are given. */
  public static List<String> arguments(String source, Pattern calls) {
    return calls
        .matcher(source)
        .results()
        .map(MatchResult::end)
        .map(start -> source.substring(start, end(source, start)))
        .toList();
  }

  /** Offset after the bracket that closes a call whose arguments begin at an offset. */
  private static int end(String source, int start) {
    int depth = 1;
    boolean quoted = false;
    int at = start;
    for (; depth > 0; at++) {
      char c = source.charAt(at);
      if (quoted && c == '\\') {
        at++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (!quoted) {
        depth += c == '(' ? 1 : c == ')' ? -1 : 0;
      }
    }
    return at;
  }
}
