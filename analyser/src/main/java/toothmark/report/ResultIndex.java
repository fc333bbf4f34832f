package toothmark.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import toothmark.compare.RecordedExamination;
import toothmark.compare.RecordedFinding;
import toothmark.units.Say;
import toothmark.units.ShortNames;

/** The table of contents of many examinations: {@code index.html} and {@code index.json}. */
public final class ResultIndex {

  /** The page's file. */
  public static final String PAGE = "index.html";

  /** The same for programs. */
  public static final String FILE = "index.json";

  private static final String SCHEMA = "toothmark.index/1";

  private ResultIndex() {}

  /**
   * Writes both files, each whole or not at all.
   *
   * @param entries in the order to list
   * @param folder the one that holds the result folders
   * @return the page
   * @throws IOException if one could not be written
   */
  public static Path write(List<IndexEntry> entries, Path folder) throws IOException {
    WholeFile.write(folder.resolve(FILE), json(entries));
    return WholeFile.write(folder.resolve(PAGE), page(entries).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * How the captures fared, in a sentence.
   *
   * @param entries all of them
   * @return how many there are, how many show a fault, and how many could not be examined
   */
  public static String summary(List<IndexEntry> entries) {
    long failed = entries.stream().filter(e -> e.exitCode() != 0).count();
    long faulty = entries.stream().filter(e -> e.exitCode() == 0 && e.count("fault") > 0).count();
    String shown = Wording.count(faulty, "index.faulty");
    return Wording.count(
        entries.size(),
        "index.captures",
        failed == 0 ? shown : Wording.of("index.failed", shown, Say.count(failed)));
  }

  private static String page(List<IndexEntry> entries) {
    HtmlWriter html = SidePage.open(Wording.of("index.title"));
    html.element("p", summary(entries), "class", "verdict");
    html.open("div", "class", "scroll").open("table", "class", "index").open("tr");
    for (String head : List.of("capture", "wheel", "findings", "verdict")) {
      html.element("th", Wording.of("index.head." + head));
    }
    html.close();
    List<String> names = names(entries);
    for (int i = 0; i < entries.size(); i++) {
      row(html, entries.get(i), names.get(i));
    }
    html.close().close();
    return SidePage.close(html);
  }

  private static void row(HtmlWriter html, IndexEntry e, String name) {
    html.open("tr").open("td");
    if (e.folder().isPresent()) {
      html.element("a", name, "href", SidePage.link(e.folder().get(), ResultFolder.PAGE));
    } else {
      html.text(name);
    }
    html.close();
    html.element("td", e.examination().flatMap(RecordedExamination::wheel).orElse("–"));
    html.open("td", "class", "badges");
    for (String severity : List.of("fault", "watch")) {
      if (e.count(severity) > 0) {
        String text = Wording.of("index." + severity, e.count(severity));
        html.element("span", text, "class", "badge " + severity);
        html.text(" ");
      }
    }
    html.close().element("td", e.said()).close();
  }

  private static List<String> names(List<IndexEntry> entries) {
    return ShortNames.of(entries.stream().map(IndexEntry::capture).map(Path::of).toList());
  }

  private static byte[] json(List<IndexEntry> entries) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
      json.setPrettyPrinter(ExaminationJson.lineFeedsOnly());
      json.writeStartObject();
      json.writeStringField("schema", SCHEMA);
      json.writeArrayFieldStart("examinations");
      for (IndexEntry e : entries) {
        entry(json, e);
      }
      json.writeEndArray();
      json.writeEndObject();
      json.writeRaw('\n');
    }
    return out.toByteArray();
  }

  private static void entry(JsonGenerator json, IndexEntry e) throws IOException {
    json.writeStartObject();
    json.writeStringField("capture", e.capture());
    json.writeStringField("folder", e.folder().orElse(null));
    json.writeNumberField("exit_code", e.exitCode());
    json.writeStringField("failure", e.failure().isEmpty() ? null : e.failure());
    json.writeStringField(
        "wheel", e.examination().flatMap(RecordedExamination::wheel).orElse(null));
    json.writeStringField(
        "verdict", e.examination().map(RecordedExamination::verdict).orElse(null));
    json.writeArrayFieldStart("findings");
    for (RecordedFinding f : e.examination().map(RecordedExamination::findings).orElse(List.of())) {
      json.writeStartObject();
      json.writeStringField("id", f.id());
      json.writeStringField("severity", f.severity());
      json.writeStringField("title", f.title());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }
}
