package toothmark.examination;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tomlj.Toml;

/** Changes in the text of a job sheet, in every way in which TOML 1.0 lets one write it. */
class JobSheetTextTest {

  private static JobSheetText text(String toml) {
    return new JobSheetText("job.toml", toml, Path.of(""));
  }

  private static final Map<String, String> COIL = new LinkedHashMap<>();

  static {
    COIL.put("channel", "\"CH9\"");
    COIL.put("cylinders", "[3]");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "# only a comment",
        "[engine]\ncylinders = 4",
        "[engine]\r\ncylinders = 4 # four\r\n\r\n[wheel]\r\n",
        "[engine.firing]\norder = [\n 1, # [first]\n 2,\n]\n[wheel]\npattern = '36-1'\n",
        "engine = { cylinders = 2, firing = { order = [1, 2] } } # in one\n",
        "engine = {}\nwheel = { }\n",
        "engine.cylinders = 2\nengine.firing.order = [1, 2]\nwheel.'pattern' = \"auto\"\n",
        "[ \"engine\" . firing ] # odd\n\torder=[1,2]#close\n[wheel]\n",
        "[job]\nnotes = \"\"\"\n[engine]\n# no comment \\\"\"\" = 1\"\"\"\"\nshop = '''\n]'''\n[engine]\n",
        "[commanded]\nadvance_deg = 1_0.5e0\n[wheel]\nsensor_circle_mm=150",
      })
  void aKeyIsStatedWhereverItIsOrBelongsAndAllElseStays(String toml) throws Exception {
    JobSheetText changed =
        text(toml)
            .with("wheel.pattern", "\"60-2\"")
            .with("engine.firing.order", "[2, 1]")
            .with("engine.cylinders", "2")
            .with("commanded.advance_deg", "7.5");
    JobSheet sheet = changed.sheet();
    assertThat(sheet.wheel().pattern().orElseThrow()).hasToString("60-2");
    assertThat(sheet.engine().firingOrder()).containsExactly(2, 1);
    assertThat(sheet.engine().cylinders()).hasValue(2);
    assertThat(sheet.commanded().advanceDegrees()).hasValue(7.5);
    JobSheet before = text(toml).sheet();
    assertThat(sheet.heading()).isEqualTo(before.heading());
    assertThat(sheet.wheel().sensorCircleMillimetres())
        .isEqualTo(before.wheel().sensorCircleMillimetres());
    List<String> comments = toml.lines().filter(l -> l.startsWith("#")).toList();
    assertThat(changed.toml().lines().toList()).containsAll(comments);
    assertThat(changed.toml().replace("\r\n", "").contains("\n")).isNotEqualTo(toml.contains("\r"));
    // the same again changes nothing
    assertThat(changed.with("engine.cylinders", "2")).isEqualTo(changed);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "coils = []\n",
        "coils = [ { channel = \"a\", cylinders = [1] }, {channel='b', cylinders = [2]}, ] # two\n",
        "[[coils]]\nchannel = \"a\" # first\ncylinders = [1]\n\n[[coils]] # second\nchannel = \"b\"\n"
            + "cylinders = [2]\n\n[wheel]\npattern = \"36-1\"",
        "[[coils]]\nchannel = \"a\"\ncylinders = [1]\n[[coils]]\nchannel = \"b\"\ncylinders = [2]",
      })
  void itemsComeGoAndChangeWithoutTheOthers(String toml) throws Exception {
    JobSheetText more = text(toml).withItem("coils", COIL);
    List<String> before = channels(text(toml));
    int last = before.size();
    assertThat(channels(more).subList(0, last)).isEqualTo(before);
    assertThat(channels(more)).endsWith("CH9").hasSize(last + 1);
    assertThat(channels(more.withoutItem("coils", last))).isEqualTo(before);
    JobSheetText renamed = more.with("coils." + last + ".name", "\"new\"");
    assertThat(renamed.sheet().coils().get(last).coil().name()).isEqualTo("new");
    if (last == 2) {
      assertThat(channels(more.withoutItem("coils", 0))).containsExactly("b", "CH9");
      assertThat(channels(more.withoutItem("coils", 1))).containsExactly("a", "CH9");
      assertThat(more.withoutItem("coils", 0).sheet().wheel())
          .isEqualTo(text(toml).sheet().wheel());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "coils = [ {channel = 'a', cylinders = [1]}, ] # none|coils = [  ] # none",
        "coils = [{channel = 'a', cylinders = [1]}]|coils = []",
        "coils = [ {channel = 'a', cylinders = [1]} # a, b;, ]|coils = [  ]",
      })
  void theLastItemOfAListGoesWithTheCommaAfterIt(String toml, String without) throws Exception {
    JobSheetText none = text(toml.replace(';', '\n')).withoutItem("coils", 0);
    assertThat(none.toml()).isEqualTo(without);
    assertThat(none.sheet().coils()).isEmpty();
  }

  /** Some editors write a byte order mark before the first letter. */
  @Test
  void aByteOrderMarkIsNoPartOfTheText(@TempDir Path folder) throws Exception {
    String toml = "[wheel]\npattern = \"60-2\"\n";
    Path file = Files.writeString(folder.resolve("job.toml"), "\uFEFF" + toml);
    assertThat(JobSheetText.read(file).toml()).isEqualTo(toml);
    assertThat(JobSheetReader.read(file).wheel().pattern().orElseThrow()).hasToString("60-2");
  }

  private static List<String> channels(JobSheetText text) throws Exception {
    return text.sheet().coils().stream().map(JobSheet.CoilEntry::channel).toList();
  }

  @Test
  void anItemIsTakenAwayWithItsOwnLinesOnly() {
    String toml = "# a\n[[coils]]\nchannel = \"a\"\n\n# b\n[[coils]]\nchannel = \"b\"\n";
    assertThat(text(toml).withoutItem("coils", 0).toml())
        .isEqualTo("# a\n\n# b\n[[coils]]\nchannel = \"b\"\n");
    assertThat(text(toml).withoutItem("coils", 1).toml())
        .isEqualTo("# a\n[[coils]]\nchannel = \"a\"\n\n# b\n");
  }

  /** The reader's own parser finds the same keys at the same places. */
  @Test
  void everyKeyIsWhereTheParserSeesIt() {
    String toml =
        "a = 1 # x\n[b.c]\n'd' = [ { e = 1, f.g = \"]#\" } ]\n  h = '''\n]'''\n[[i]]\nj = 1979-05-27 07:32:00\n";
    TomlPlaces places = new TomlPlaces(toml);
    var parsed = Toml.parse(toml);
    assertThat(parsed.errors()).isEmpty();
    for (String key : List.of("a", "b.c.d", "b.c.h")) {
      var at = parsed.inputPositionOf(key);
      int start = places.value(List.of(key.split("\\."))).orElseThrow().start();
      long line = toml.substring(0, start).chars().filter(c -> c == '\n').count() + 1;
      assertThat(line).as(key).isEqualTo(at.line());
      assertThat(start - toml.lastIndexOf('\n', start)).as(key).isEqualTo(at.column());
    }
    assertThat(places.value(List.of("b", "c", "d", "0", "f", "g"))).isPresent();
    assertThat(
            places.value(List.of("i", "0", "j")).map(p -> toml.substring(p.valueStart(), p.end())))
        .contains("1979-05-27 07:32:00");
  }
}
