package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.chart.SampleRun;
import toothmark.examination.Examination;
import toothmark.examination.JobSheet;
import toothmark.findings.Observations;
import toothmark.timing.Timing;

class ReportHtmlTest {

  @Test
  void isWellFormedAndNeedsNothingFromOutside() throws Exception {
    String page = page(SampleRun.full());
    Document document = parse(page);
    assertThat(document.getElementsByTagName("script").getLength()).isZero();
    assertThat(page.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http", "src=\"/");
    assertThat(page.length()).isLessThan(3_000_000);
    NodeList links = document.getElementsByTagName("a");
    for (int i = 0; i < links.getLength(); i++) {
      String target = ((Element) links.item(i)).getAttribute("href");
      assertThat(target.startsWith("#") || ResultFolder.fileNames().contains(target)).isTrue();
    }
  }

  /** Coils were recorded, but nothing tells an advance, so there are no bands of speed. */
  @Test
  void coilsWithoutAdvanceHaveNoTableOfTeeth() throws Exception {
    Examination e = SampleRun.full();
    Observations o = e.observations();
    Timing t = o.timing();
    Timing none =
        new Timing(
            Timing.Reference.UNKNOWN,
            Optional.empty(),
            List.of(),
            t.sparks(),
            List.of(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty());
    Observations unknown = with(o, o.capture(), none);

    assertThat(page(e)).contains("Teeth before charge and spark");
    assertThat(page(new Examination(e.sheet(), e.roles(), unknown, e.diagnosis(), e.teeth())))
        .doesNotContain("Teeth before charge and spark");
  }

  @Test
  void leadsEachLinkToOnePlace() throws Exception {
    Document document = parse(page(SampleRun.full()));
    List<String> ids = new ArrayList<>();
    NodeList all = document.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      String id = ((Element) all.item(i)).getAttribute("id");
      if (!id.isEmpty()) {
        ids.add(id);
      }
    }
    assertThat(new HashSet<>(ids)).hasSameSizeAs(ids);
    for (int i = 0; i < all.getLength(); i++) {
      String target = ((Element) all.item(i)).getAttribute("href");
      if (target.startsWith("#")) {
        assertThat(ids).contains(target.substring(1));
      }
    }
  }

  @Test
  void saysTheVerdictFirstThenTheFindingsThenTheFigures() throws IOException {
    String page = page(SampleRun.full());
    assertThat(page)
        .containsSubsequence(
            "rev-up.csv · 4.00\u202fs at 50.0\u202fkSa/s · channels CH1, CH2, CH3, CH4",
            "Tooth 11 is bent and sync is lost at tooth 12.",
            "Look at tooth 11 of the wheel with the engine stopped",
            "id=\"findings\"",
            "id=\"damaged-tooth\"",
            "Is any tooth out of place or weak?",
            "id=\"timing-delay\"",
            "id=\"figures\"",
            "−2.598\u00a0±\u00a00.041°",
            "id=\"pictures\"",
            "id=\"not-examined\"",
            "id=\"read\"",
            "Read as delimited text, comma, decimal point.",
            "id=\"computed\"",
            "id=\"cautions\"",
            "id=\"customer\"");
  }

  @Test
  void saysWhatAnAdvanceIsCountedFromWhereThereIsNoMark() throws Exception {
    String against = "against the setting that the controller is told, not against top dead centre";
    String page = page(SampleRun.withoutTdc());
    parse(page);
    assertThat(page)
        .containsSubsequence(
            "id=\"figures\"",
            "rev/min; " + against + "<",
            "<p>Counted " + against + ".</p>",
            "id=\"customer\"",
            "What happens next",
            "<p>Our recording does not show whether the toothed wheel stands at the right place",
            "<li>the moment of the sparks, if the wheel stands where the control unit is told</li>",
            "<p>This recording does not show whether the wheel stands at its right place");
    assertThat(page(SampleRun.full())).doesNotContain(against).doesNotContain("was not checked");
  }

  @Test
  void isTheSameEachTime() throws IOException {
    assertThat(page(SampleRun.full())).isEqualTo(page(SampleRun.full()));
  }

  @Test
  void showsWhatFilesAndPeopleWroteAsText() throws Exception {
    String nasty = "</title><script>alert('x')</script>&\"\u0000\u202E";
    String page = page(named(nasty));
    assertThat(page).doesNotContain("<script").doesNotContain("\u0000");
    assertThat(page).contains("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&amp;&quot;\uFFFD");
    parse(page);
  }

  @Test
  void saysWhyNothingCouldBeDecoded() throws Exception {
    String page = page(SampleRun.undecodable());
    parse(page);
    assertThat(page).contains("There is no crank signal.").doesNotContain("id=\"findings\"");
  }

  @Test
  void refusesAPageWithAnElementLeftOpen() {
    HtmlWriter html = new HtmlWriter().open("p");
    assertThatThrownBy(html::toString).hasMessage("still open: [p]");
  }

  /** The sample with the same words for every name that comes from outside. */
  static Examination named(String words) {
    Examination e = SampleRun.full();
    Observations o = e.observations();
    List<Channel> channels =
        o.capture().channels().stream()
            .map(c -> c.name().equals("CH1") ? new Channel(words, words, c.signal()) : c)
            .toList();
    Capture capture =
        new Capture(
            words,
            channels,
            new Reading(words, List.of(new Reading.Fact(words, words)), List.of(words)));
    JobSheet s = e.sheet();
    return new Examination(
        s.withHeading(new JobSheet.Heading(words, words, words)),
        new Examination.Roles(words, e.roles().tdc(), e.roles().coils(), words),
        with(o, capture, o.timing()),
        e.diagnosis(),
        e.teeth());
  }

  private static Observations with(Observations o, Capture capture, Timing timing) {
    return new Observations(
        capture,
        o.crankUnit(),
        o.stated(),
        o.edges(),
        o.disturbances(),
        o.crank(),
        o.undecodable(),
        o.receiver(),
        o.coils(),
        timing);
  }

  private static String page(Examination e) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ReportHtml.write(e, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static Document parse(String page) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(page)));
  }
}
