package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Queue;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.desktop.JobDraft.Field;
import toothmark.examination.JobSheetText;
import toothmark.findings.Finding;
import toothmark.units.Interval;

/** The window without a window: what it shows and how its views hang together. */
class DeskModelTest {

  private static final Path LOOSE = Path.of("../signal-samples/loose-connector/capture.csv.gz");

  /** Work waits here until a test lets it run, so that a test can act in between. */
  private final Queue<Runnable> work = new ArrayDeque<>();

  private DeskModel model;

  @BeforeEach
  void model() {
    model = new DeskModel(work::add, Runnable::run, Runnable::run);
  }

  /** Examined once for all tests. */
  private static Session loose;

  private void openLoose() {
    if (loose == null) {
      model.bench.open(Request.of(LOOSE));
      runWork();
      loose = model.bench.session.get().orElseThrow();
    } else {
      model.bench.session.set(Optional.of(loose));
    }
  }

  private void runWork() {
    while (!work.isEmpty()) {
      work.remove().run();
    }
  }

  @Test
  void openingShowsProgressThenTheVerdictAndPicksOutTheFirstFinding() {
    model.bench.open(Request.of(LOOSE));
    assertThat(model.bench.progress.get())
        .contains(new Bench.Progress("Reading capture.csv.gz", -1));
    runWork();
    assertThat(model.bench.progress.get()).isEmpty();
    Finding first = model.examination().orElseThrow().diagnosis().findings().get(0);
    assertThat(first.id()).isEqualTo("intermittent-connection");
    assertThat(model.selected.get().finding()).contains(first);
    assertThat(
            model.view.get().orElseThrow().shown().contains(first.where().get(0).startInclusive()))
        .isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "loose-connector, TOOTH_MISSING",
    "sparks-in-the-signal, STRAY",
    "straight-into-the-limiter, SPARK_ABSENT",
    "weak-on-the-starter, SYNC_LOST"
  })
  void theFirstFindingIsPickedOutAtItsFirstEvent(String sample, CaptureEvent.Kind kind) {
    model.bench.open(Request.of(Path.of("../signal-samples", sample, "capture.csv.gz")));
    runWork();
    Finding first = model.examination().orElseThrow().diagnosis().findings().get(0);
    CaptureEvent event =
        model.events().stream().filter(e -> e.kind() == kind).findFirst().orElseThrow();
    assertThat(model.selected.get())
        .isEqualTo(
            new Selected(
                Optional.of(first), event.tooth(), OptionalDouble.of(event.timeSeconds())));
    assertThat(model.eventHere()).contains(event);
    assertThat(model.view.get().orElseThrow().shown().contains(event.timeSeconds())).isTrue();
  }

  @Test
  void aCancelledOpeningLeavesWhatIsThere() {
    openLoose();
    Session before = model.bench.session.get().orElseThrow();
    model.bench.open(Request.of(Path.of("../signal-samples/clean-idle/capture.csv.gz")));
    model.bench.cancel();
    runWork();
    assertThat(model.bench.progress.get()).isEmpty();
    assertThat(model.bench.session.get()).contains(before);
    assertThat(model.bench.complaint.get()).isEmpty();
  }

  @Test
  void theStartOfALongFileIsInViewBeforeTheRestIsRead(@TempDir Path folder) throws Exception {
    Path file = longFile(folder);
    List<Session> seen = new ArrayList<>();
    model.bench.session.watch(s -> seen.add(s.orElseThrow()));
    model.bench.open(Request.of(file));
    runWork();
    assertThat(seen).hasSize(3);
    assertThat(seen.get(0).examination()).isEmpty();
    // 2 MiB of rows of 18 bytes, 20 us apart
    assertThat(seen.get(0).capture().span().seconds()).isCloseTo(2.33, within(0.02));
    assertThat(seen.get(1).examination()).isEmpty();
    assertThat(seen.get(1).capture().span().seconds()).isCloseTo(10, within(0.01));
    assertThat(seen.get(2).examination()).isPresent();
    assertThat(model.view.get().orElseThrow().whole().seconds()).isCloseTo(10, within(0.01));
    model.bench.session.get().orElseThrow().capture().close();
  }

  @Test
  void callingOffALongFileGoesBackToWhatWasThere(@TempDir Path folder) throws Exception {
    openLoose();
    Session before = model.bench.session.get().orElseThrow();
    List<Session> seen = new ArrayList<>();
    model.bench.session.watch(
        s -> {
          seen.add(s.orElseThrow());
          if (s.orElseThrow().examination().isEmpty()) {
            model.bench.cancel();
          }
        });
    model.bench.open(Request.of(longFile(folder)));
    runWork();
    assertThat(seen).hasSize(2);
    assertThat(model.bench.session.get()).contains(before);
    assertThat(model.job.draft.get()).isEqualTo(JobDraft.of(before.given().text()));
    assertThat(model.bench.progress.get()).isEmpty();
  }

  @Test
  void callingOffALongFileGoesBackToTheSheetAsItWasSaved(@TempDir Path folder) throws Exception {
    Path capture = Files.copy(LOOSE, folder.resolve("capture.csv.gz"));
    model.bench.open(Request.of(capture));
    runWork();
    JobDraft read = model.job.draft.get();
    model.job.edit(read.with(Field.TITLE, "Van"), Field.TITLE);
    JobSheetText written = model.job.draft.get().text(folder);
    model.job.saved(model.job.draft.get(), written);
    model.job.edit(model.job.draft.get().with(Field.NOTES, "hums"), Field.NOTES);
    model.bench.session.watch(
        s -> {
          if (s.orElseThrow().examination().isEmpty()) {
            model.bench.cancel();
          }
        });
    model.bench.open(Request.of(longFile(folder)));
    runWork();
    assertThat(model.job.draft.get().get(Field.TITLE)).isEqualTo("Van");
    assertThat(model.job.draft.get().get(Field.NOTES)).isEqualTo("hums");
    assertThat(model.job.saved.get().get(Field.TITLE)).isEqualTo("Van");
    assertThat(model.job.isKnown(written.file(), written.toml())).isTrue();
    assertThat(model.examination().orElseThrow().sheet().heading().title()).isEqualTo("Van");
    model.job.undo();
    model.job.undo();
    assertThat(model.job.draft.get()).isEqualTo(read);
    model.bench.session.get().orElseThrow().capture().close();
  }

  /** A report, or a trial of another circuit, is worked at while another capture is opened. */
  @Test
  void noCaptureIsClosedWhileWorkThatReadsItIsUnderWay() {
    Queue<Runnable> beside = new ArrayDeque<>();
    model = new DeskModel(work::add, beside::add, Runnable::run);
    model.bench.open(Request.of(LOOSE));
    runWork();
    Optional<Session> before = model.bench.session.get();
    List<Boolean> ended = new ArrayList<>();
    model.whatIf.play();
    model.bench.open(Request.of(LOOSE.resolve("../../clean-idle/capture.csv.gz").normalize()));
    runWork();
    model.bench.afterAsides(() -> ended.add(model.whatIf.outcome.get().isPresent()));
    assertThat(model.bench.session.get()).isNotEqualTo(before);
    assertThat(ended).isEmpty();
    beside.remove().run();
    assertThat(model.bench.complaint.get()).isEmpty();
    assertThat(ended).containsExactly(true);
    model.bench.session.get().orElseThrow().capture().close();
  }

  @Test
  void whatIsTypedWhileALongFileIsExaminedIsNotLost(@TempDir Path folder) throws Exception {
    model.bench.session.watch(
        s -> {
          if (s.orElseThrow().examination().isEmpty()) {
            JobDraft now = model.job.draft.get();
            model.job.edit(now.with(JobDraft.Field.CIRCLE, "140"), JobDraft.Field.CIRCLE);
          }
        });
    model.bench.open(Request.of(longFile(folder)));
    runWork();
    assertThat(model.examination().orElseThrow().sheet().wheel().sensorCircleMillimetres())
        .hasValue(140);
    assertThat(model.job.isUnsaved()).isTrue();
    model.bench.session.get().orElseThrow().capture().close();
  }

  /** Ten seconds of a hum at 50 kSa/s, 500 000 rows of 18 bytes. */
  private static Path longFile(Path folder) throws IOException {
    StringBuilder rows = new StringBuilder("time (s),CH1 (V)\n");
    for (int i = 0; i < 500_000; i++) {
      double volts = 1.5 + Math.sin(2 * Math.PI * 50 * i * 2e-5);
      rows.append(String.format(Locale.ROOT, "%09.6f,%.5f\n", i * 2e-5, volts));
    }
    return Files.writeString(folder.resolve("long.csv"), rows);
  }

  @Test
  void aWrongFileIsComplainedOfAndLeavesWhatIsThere() {
    openLoose();
    Session before = model.bench.session.get().orElseThrow();
    model.bench.open(Request.of(Path.of("../signal-samples/none.csv")));
    runWork();
    Complaint c = model.bench.complaint.get().orElseThrow();
    assertThat(c.heading()).isEqualTo("none.csv could not be opened.");
    assertThat(c.detail()).endsWith("none.csv: no such file; check the name and the folder");
    assertThat(model.bench.session.get()).contains(before);
  }

  @Test
  void steppingVisitsEveryEventOnceInOrder() {
    openLoose();
    model.showAll();
    model.selected.set(Selected.NOTHING);
    model.moveTo(model.view.get().orElseThrow().whole().startInclusive());
    int steps = 0;
    double last = Double.NEGATIVE_INFINITY;
    while (model.step(1).isPresent()) {
      double t = model.selected.get().instant().orElseThrow();
      assertThat(t).isGreaterThan(last);
      assertThat(model.view.get().orElseThrow().shown().contains(t)).isTrue();
      last = t;
      steps++;
    }
    long instants = model.events().stream().map(CaptureEvent::timeSeconds).distinct().count();
    assertThat(steps).isEqualTo((int) instants).isGreaterThan(3);
    assertThat(model.step(-1).orElseThrow().timeSeconds()).isLessThan(last);
  }

  @Test
  void pickingAToothBringsItsNearestPassIntoView() {
    openLoose();
    model.selectInstant(0.2);
    model.show(new Interval(0.19, 0.21));
    model.selectTooth(30);
    double t = model.selected.get().instant().orElseThrow();
    assertThat(model.selected.get().tooth()).isEqualTo(OptionalInt.of(30));
    // tooth 30 of a 60-tooth pitch stands 29 times 6 degrees after tooth 1
    assertThat(model.degreesAt(t).orElseThrow()).isCloseTo(174, within(0.5));
    // half a turn at the 1500 rev/min of this capture
    assertThat(t).isCloseTo(0.2, within(0.0205));
    assertThat(model.view.get().orElseThrow().shown().contains(t)).isTrue();
  }

  @Test
  void turningTheCrankByHandMovesTheInstant() {
    openLoose();
    model.selectInstant(0.2);
    double before = model.degreesAt(0.2).orElseThrow();
    model.turnBy(30);
    double t = model.selected.get().instant().orElseThrow();
    assertThat(model.degreesAt(t).orElseThrow()).isCloseTo((before + 30) % 360, within(1.0));
  }

  @Test
  void theCursorsCountTeethAndDegrees() {
    openLoose();
    double a = 0.2;
    double turn = 60 / model.rpmAt(a).orElseThrow();
    model.cursors.set(Cursors.NONE.withFirst(a).withSecond(a + turn));
    Cursors.Reading r = model.cursors.get().measure(model.examination().orElseThrow());
    assertThat(r.degrees().orElseThrow()).isCloseTo(360, within(4.0));
    // a 60-2 wheel has 58 teeth
    assertThat(r.teeth().orElseThrow()).isBetween(57, 59);
    assertThat(r.rpm().orElseThrow()).isCloseTo(r.degrees().orElseThrow() / 6 / turn, within(1e-9));
  }

  @Test
  void aChangedJobIsExaminedAgainWhileTheOldStaysInView() {
    openLoose();
    var before = model.examination().orElseThrow();
    model.job.edit(model.job.draft.get().with(Field.PATTERN, "60-2"), Field.PATTERN);
    assertThat(model.examination()).contains(before);
    assertThat(model.bench.progress.get()).contains(new Bench.Progress("Examining", -1));
    runWork();
    var after = model.examination().orElseThrow();
    assertThat(after.sheet().wheel().pattern().orElseThrow()).hasToString("60-2");
    assertThat(model.job.isUnsaved()).isTrue();
    model.job.undo();
    runWork();
    assertThat(model.examination().orElseThrow().sheet()).isEqualTo(before.sheet());
    assertThat(model.job.isUnsaved()).isFalse();
  }

  @Test
  void whatIsCalledOffChangesNothing() {
    openLoose();
    var before = model.examination().orElseThrow();
    model.job.edit(model.job.draft.get().with(Field.PATTERN, "60-2"), Field.PATTERN);
    model.bench.cancel();
    runWork();
    assertThat(model.examination()).contains(before);
    assertThat(model.bench.progress.get()).isEmpty();
    assertThat(model.bench.complaint.get()).isEmpty();
  }

  @Test
  void aWrongJobIsNotExamined() {
    openLoose();
    model.job.edit(model.job.draft.get().with(Field.PATTERN, "60-"), Field.PATTERN);
    assertThat(work).isEmpty();
    assertThat(model.job.fault.get().orElseThrow().field()).isEqualTo(Optional.of(Field.PATTERN));
  }

  @Test
  void notesChangeTheReportWithoutAnotherExamination() {
    openLoose();
    var before = model.examination().orElseThrow();
    model.job.edit(model.job.draft.get().with(Field.NOTES, "loose at the plug"), Field.NOTES);
    assertThat(work).isEmpty();
    var after = model.examination().orElseThrow();
    assertThat(after.sheet().heading().notes()).isEqualTo("loose at the plug");
    assertThat(after.diagnosis()).isSameAs(before.diagnosis());
  }
}
