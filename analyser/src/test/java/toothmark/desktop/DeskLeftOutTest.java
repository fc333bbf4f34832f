package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;
import static toothmark.desktop.DrivenWindow.type;
import static toothmark.desktop.DrivenWindow.words;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.AbstractButton;
import javax.swing.JTextArea;
import org.junit.jupiter.api.Test;
import toothmark.desktop.JobDraft.Field;
import toothmark.examination.Examination;

/** A capture is opened without what lies beside it and cannot be used; needs a display. */
class DeskLeftOutTest extends OpenedSheet {

  private static final String LEFT_OUT = "The job sheet could not be used and was left out.";
  private static final String MISSPELT = "# of the customer\n[wheel]\npatern = \"36-1\"\n";
  private static final String UNKNOWN =
      "job.toml, line 3: wheel.patern: unknown key; the nearest known key is wheel.pattern";

  private void openBeside(String toml) throws Exception {
    Files.writeString(sheet, toml);
    window.open(folder.resolve("capture.csv.gz"));
  }

  private Examination examination() {
    return window.ask(w -> w.model.examination().orElseThrow());
  }

  private JTextArea text() {
    return (JTextArea) named(window.frame(), "mending.text");
  }

  @Test
  void aSheetThatCannotBeReadIsLeftOutAndMendedAtItsLine() throws Exception {
    openBeside(MISSPELT);
    assertThat(notice()).isEqualTo(LEFT_OUT + "\n" + UNKNOWN);
    assertThat(examination().sheet().wheel().pattern()).isEmpty();
    assertThat(examination().roles().assumption()).endsWith(LEFT_OUT + " " + UNKNOWN);

    window.on(w -> ((AbstractButton) named(all(w), "notice.on")).doClick());
    assertThat(window.<String>ask(w -> text().getSelectedText())).isEqualTo("patern = \"36-1\"\n");
    assertThat(window.<Boolean>ask(w -> text().isShowing())).isTrue();
    window.on(w -> text().setText(MISSPELT.replace("patern", "pattern").replace("36-1", "36-x")));
    assertThat(window.<String>ask(w -> words(named(all(w), "mending.complaint"))))
        .startsWith("job.toml, line 3: wheel.pattern: \"36-x\" is not a wheel;");
    assertThat(window.<Boolean>ask(w -> w.commands.get("useMended").isEnabled())).isFalse();

    String mended = MISSPELT.replace("patern", "pattern");
    window.on(w -> text().setText(mended));
    window.run("useMended");
    window.settle();
    assertThat(examination().sheet().wheel().pattern().map(Object::toString)).contains("36-1");
    assertThat(examination().roles().assumption()).doesNotContain(LEFT_OUT);
    assertThat(notice()).isEmpty();
    assertThat(window.<Boolean>ask(w -> text().isShowing())).isFalse();
    assertThat(window.<String>ask(w -> w.model.job.draft.get().get(Field.PATTERN)))
        .isEqualTo("36-1");
    assertThat(window.<Boolean>ask(w -> w.model.job.isUnsaved())).isTrue();
    window.on(w -> w.files.writeJob(sheet));
    assertThat(Files.readString(sheet)).isEqualTo(mended);
  }

  @Test
  void aSheetMendedOutsideIsTakenWhenOpenedAgainAndTheSameFaultIsToldAgain() throws Exception {
    openBeside("[wheel\n");
    String told = notice();
    assertThat(told).startsWith(LEFT_OUT + "\njob.toml, line 1: ");
    window.on(w -> w.notice.putAway());
    window.run("openAgain");
    window.settle();
    assertThat(notice()).isEqualTo(told);
    Files.writeString(sheet, SHEET);
    window.run("openAgain");
    window.settle();
    assertThat(notice()).isEmpty();
    assertThat(examination().sheet().heading().title()).isEqualTo("Van");
  }

  @Test
  void aSheetThatDoesNotFitTheCaptureIsLeftOutAndMendedInTheForm() throws Exception {
    String crank = examination().roles().crank();
    openBeside("[channels]\ncrank = \"CH9\"\n");
    assertThat(notice())
        .startsWith(LEFT_OUT + "\nchannels.crank: capture.csv.gz has no channel \"CH9\"; it has ");
    assertThat(examination().roles().crank()).isEqualTo(crank);
    assertThat(window.<String>ask(w -> w.model.job.draft.get().get(Field.CRANK))).isEqualTo("CH9");
    window.on(w -> w.model.job.edit(w.model.job.draft.get().with(Field.CRANK, crank)));
    window.settle();
    assertThat(notice()).isEmpty();
    assertThat(examination().sheet().channels().crank()).contains(crank);
  }

  @Test
  void aLogThatCannotBeUsedIsLeftOutAndTheSheetStays() throws Exception {
    String leftOut = "The controller's log could not be used and was left out.\n";
    Path log =
        Files.writeString(folder.resolve("controller.csv"), "Time,RPM,Load\n0,955,35\n1,955,35\n");
    window.run("openAgain");
    window.settle();
    assertThat(notice()).startsWith(leftOut + "the controller's log has no column Advance");
    assertThat(examination().sheet().heading().title()).isEqualTo("Van");
    Files.writeString(log, "");
    window.run("openAgain");
    window.settle();
    assertThat(notice()).startsWith(leftOut);
    assertThat(examination().sheet().heading().title()).isEqualTo("Van");
  }

  @Test
  void whereTheCaptureCannotBeReadBothAreTold() throws Exception {
    Files.writeString(sheet, MISSPELT);
    Path empty = Files.writeString(folder.resolve("empty.csv"), "");
    window.open(empty);
    assertThat(notice())
        .startsWith("empty.csv could not be opened.\n")
        .endsWith(LEFT_OUT + "\n" + UNKNOWN);
  }

  @Test
  void anEarlierCaptureIsComparedByTheSheetThatIsOpenWhereItsOwnCannotBeRead() throws Exception {
    Path earlier = Files.createDirectory(folder.resolve("earlier"));
    Files.writeString(earlier.resolve("job.toml"), MISSPELT);
    Files.copy(folder.resolve("capture.csv.gz"), earlier.resolve("capture.csv.gz"));
    window.on(w -> w.model.bench.compare(Request.of(earlier.resolve("capture.csv.gz"))));
    window.settle();
    assertThat(window.<Boolean>ask(w -> w.comparison().isPresent())).isTrue();
    assertThat(notice()).isEqualTo(LEFT_OUT + "\n" + UNKNOWN);
    window.on(w -> w.comparison().orElseThrow().frame.dispose());
  }

  @Test
  void whatIsWrittenIsNamedAndItsFolderShown() throws Exception {
    Path[] shown = new Path[1];
    window.on(w -> w.files.opener = Optional.of(f -> shown[0] = f));
    window.on(w -> w.pictures.show("speed"));
    window.settle();
    for (String name : new String[] {"speed.svg", "speed.png", "speed.csv"}) {
      window.begin(w -> w.files.savePicture());
      window.choose(folder.resolve(name));
      assertThat(notice()).isEqualTo(folder.resolve(name) + " was saved.");
    }
    window.run("showFolder");
    assertThat(shown[0]).isEqualTo(folder);
    window.on(w -> w.files.writeReport(folder.resolve("report")));
    window.settle();
    assertThat(notice())
        .isEqualTo("The report was written: " + folder.resolve("report/report.html"));
    window.on(w -> ((AbstractButton) named(all(w), "notice.on")).doClick());
    assertThat(shown[0]).isEqualTo(folder.resolve("report"));
    Path tape = folder.resolve("tape.pdf");
    window.on(w -> w.aids().show("tape"));
    window.begin(w -> w.files.savePrint(() -> new byte[] {1}));
    window.choose(tape);
    assertThat(window.<String>ask(w -> words(w.aids().notice))).startsWith(tape + " was saved.");
    window.on(w -> w.aids().dialog.dispose());
    window.on(w -> w.files.opener = Optional.empty());
    window.on(w -> type(w, Field.NOTES, "hums"));
    window.on(w -> w.files.writeJob(sheet));
    assertThat(notice()).isEqualTo("The job sheet was saved: " + sheet);
    assertThat(window.<Boolean>ask(w -> named(all(w), "notice.on").isVisible())).isFalse();
  }
}
