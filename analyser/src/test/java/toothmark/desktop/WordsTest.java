package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import toothmark.units.Source;

/** Whether all words of the window stand in its book. */
class WordsTest {

  /** Calls that show their arguments to a person. */
  private static final Pattern SHOWN =
      Pattern.compile(
          "\\b(?:setText|setTitle|setToolTipText|setString|setDialogTitle|drawString|hint|tag|say"
              + "|welcome|Complaint|Progress|addTab|setAccessibleName|setAccessibleDescription"
              + "|J(?:Label|Button|Menu|MenuItem|CheckBox|Frame|Dialog|RadioButtonMenuItem)"
              + "|show(?:Message|Confirm|Option|Input)Dialog)\\(");

  /**
   * Calls whose literals are no words: keys of the book, names of parts, what a programmer reads.
   */
  private static final Pattern UNSHOWN =
      Pattern.compile(
          "\\b(?:Phrases\\.of|Phrases\\.find|named|field|setName|commands\\.\\w+|\\w+(?:Exception|Error))\\(");

  /** Units are the same in every language. */
  private static final Set<String> UNITS = Set.of("s", "ms", "V", "mm", "Sa/s");

  /** Two words in a row; keys of the keyboard are in capitals. */
  private static final Pattern WORDS = Pattern.compile("\\p{L}{2,} \\p{L}*\\p{Ll}\\p{L}*");

  /** What the layout manager, the keyboard and the page in HTML read. */
  private static final Pattern FOR_MACHINES =
      Pattern.compile(
          "\\b(?:insets|gap\\w*|wmin|hmin|grow\\w*|span|cell|sizegroup)\\b|[<>{}]|^(?:menu|alt|shift) |^\\\\n$");

  @Test
  void noWordsAreWrittenBesideTheBook() throws Exception {
    List<String> found = new ArrayList<>();
    for (Path file : Source.files("desktop")) {
      String spoken = Source.without(Source.of(file), UNSHOWN);
      for (String argument : Source.arguments(spoken, SHOWN)) {
        Source.literals(argument)
            .filter(l -> l.matches(".*\\p{L}.*") && !UNITS.contains(l))
            .filter(l -> !FOR_MACHINES.matcher(l).find())
            .forEach(l -> found.add(file.getFileName() + ": " + l));
      }
      Source.literals(spoken)
          .filter(l -> WORDS.matcher(l).find() && !FOR_MACHINES.matcher(l).find())
          .forEach(l -> found.add(file.getFileName() + ": " + l));
    }
    assertThat(found).isEmpty();
  }

  @Test
  void theScanFindsWhatItLooksFor() {
    String source =
        "a.setText(\"Open\" + Phrases.of(\"k\")); b(\"two words\"); throw new XError(\"a b\");";
    String spoken = Source.without(source, UNSHOWN);
    assertThat(Source.arguments(spoken, SHOWN).stream().flatMap(Source::literals))
        .containsExactly("Open");
    assertThat(Source.literals(spoken).filter(l -> WORDS.matcher(l).find()))
        .containsExactly("two words");
  }
}
