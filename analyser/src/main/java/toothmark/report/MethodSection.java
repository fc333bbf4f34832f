package toothmark.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import toothmark.capture.Reading;
import toothmark.examination.Examination;
import toothmark.findings.Diagnosis;
import toothmark.findings.Finding;
import toothmark.findings.NotExamined;

/** What could not be examined, how the capture was read and computed, and the cautions. */
final class MethodSection {

  private static final List<String> COMPUTED =
      List.of("edges", "wheel", "sync", "gap", "uncertainty");

  private static final List<String> CAUTIONS =
      List.of("turning", "blocked", "hot", "high-voltage", "unplug", "stop", "maker");

  private final HtmlWriter html;
  private final Examination examination;

  MethodSection(HtmlWriter html, Examination examination) {
    this.html = html;
    this.examination = examination;
  }

  void write() {
    notExamined(examination.diagnosis());
    reading(examination.observations().capture().reading());
    html.element("h2", Wording.of("method.computed"), "id", "computed");
    list(COMPUTED.stream().map(k -> Wording.of("method.computed." + k)).toList());
    files();
    html.element("h2", Wording.of("method.cautions"), "id", "cautions");
    list(CAUTIONS.stream().map(k -> Wording.of("method.cautions." + k)).toList());
  }

  private void notExamined(Diagnosis diagnosis) {
    if (diagnosis.notExamined().isEmpty()) {
      return;
    }
    html.element("h2", Wording.of("method.unexamined"), "id", "not-examined");
    Map<String, String> idsByReason = new LinkedHashMap<>();
    for (NotExamined n : diagnosis.notExamined()) {
      idsByReason.merge(n.reason(), Finding.name(n.id()), (a, b) -> a + ", " + b);
    }
    html.open("ul");
    for (Map.Entry<String, String> e : idsByReason.entrySet()) {
      html.open("li").element("span", Wording.capital(e.getValue()) + ": ", "class", "label");
      html.text(e.getKey()).close();
    }
    html.close();
  }

  private void reading(Reading reading) {
    html.element("h2", Wording.of("method.read"), "id", "read");
    html.element("p", Wording.of("method.format", reading.format()));
    html.open("table");
    for (Reading.Fact fact : reading.facts()) {
      fact(fact.label(), fact.value());
    }
    fact(Wording.of("role.crank"), examination.roles().crank());
    examination.roles().tdc().ifPresent(c -> fact(Wording.of("method.tdc"), c));
    for (Map.Entry<String, String> coil : examination.roles().coils().entrySet()) {
      fact(coil.getKey(), coil.getValue());
    }
    html.close();
    List<String> doubts = new ArrayList<>(reading.doubts());
    if (!examination.roles().assumption().isEmpty()) {
      doubts.add(examination.roles().assumption());
    }
    examination.observations().timing().log().ifPresent(l -> doubts.add(l.reason()));
    examination
        .observations()
        .timing()
        .table()
        .ifPresent(t -> doubts.add(Wording.of("method.table", Wording.of(t))));
    list(doubts);
  }

  private void fact(String label, String value) {
    html.open("tr").element("td", label, "class", "basis").element("td", value).close();
  }

  private void files() {
    html.open("p", "class", "small quiet").text(Wording.of("method.files"));
    List<String> names =
        ResultFolder.fileNames().stream().filter(n -> !n.equals(ResultFolder.PAGE)).toList();
    for (int i = 0; i < names.size(); i++) {
      html.element("a", names.get(i), "href", names.get(i)).text(i + 1 < names.size() ? ", " : ".");
    }
    html.close();
  }

  private void list(List<String> sentences) {
    if (!sentences.isEmpty()) {
      html.open("ul");
      sentences.forEach(s -> html.element("li", s));
      html.close();
    }
  }
}
