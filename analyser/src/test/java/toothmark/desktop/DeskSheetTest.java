package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;
import static toothmark.desktop.DrivenWindow.type;
import static toothmark.desktop.DrivenWindow.words;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import toothmark.desktop.JobDraft.Field;
import toothmark.examination.JobSheetReader;

/** How the real window saves the job sheet; skipped where there is no display. */
class DeskSheetTest extends OpenedSheet {

  private static final String LOG = "Time,RPM,Load,Advance\n0,955,35,10\n10,955,35,10\n";

  private boolean isOpen() {
    return window.ask(w -> w.frame.isDisplayable());
  }

  @Test
  void theSheetThatWasOpenedIsSavedInItsPlaceWithoutAQuestion() throws Exception {
    note("hums");
    window.begin(w -> w.commands.run("saveJob"));
    assertThat(
            window.<Path>ask(w -> DrivenWindow.chooser().orElseThrow().getSelectedFile().toPath()))
        .isEqualTo(sheet);
    window.choose(sheet);
    assertThat(Files.readString(sheet)).isEqualTo(SHEET + "notes = \"hums\"\n");
    assertThat(window.<Boolean>ask(w -> w.model.job.isUnsaved())).isFalse();
    note("hums on");
    window.begin(w -> w.commands.run("saveJob"));
    window.choose(sheet);
    assertThat(Files.readString(sheet)).isEqualTo(SHEET + "notes = \"hums on\"\n");
  }

  @Test
  void anIgnitionTableIsChosenAndNamedFromTheSheetOn() throws Exception {
    Path maps = Files.createDirectory(folder.resolve("maps"));
    Path table = Files.writeString(maps.resolve("advance.csv"), ",500,3000\n20,10,30\n100,5,20\n");
    window.begin(w -> w.commands.run("choose.commanded.table"));
    window.choose(table);
    window.on(w -> type(w, Field.LOAD, "60"));
    window.settle();
    assertThat(
            window.<Double>ask(
                w ->
                    w.model
                        .examination()
                        .orElseThrow()
                        .sheet()
                        .commanded()
                        .table()
                        .orElseThrow()
                        .advance(500, 60)))
        .isEqualTo(7.5);
    window.on(w -> w.files.writeJob(sheet));
    assertThat(Files.readString(sheet))
        .isEqualTo(SHEET + "\n[commanded]\ntable = \"maps/advance.csv\"\nload = 60\n");
    assertThat(notice()).isEqualTo("The job sheet was saved: " + sheet);
  }

  @Test
  void aSheetThatWasNotOpenedOrWasChangedSinceIsReplacedOnlyWhenAllowed() throws Exception {
    note("hums");
    Path other = Files.writeString(folder.resolve("other.toml"), "[job]\ntitle = \"Boat\"\n");
    window.begin(w -> w.commands.run("saveJob"));
    window.choose(other);
    assertThat(window.<String>ask(w -> DrivenWindow.question()))
        .contains("other.toml is there already. Replace it?");
    window.answer("Keep it");
    assertThat(other).hasContent("[job]\ntitle = \"Boat\"\n");
    assertThat(window.<Boolean>ask(w -> w.model.job.isUnsaved())).isTrue();

    Files.writeString(sheet, SHEET + "shop = \"by hand\"\n");
    window.begin(w -> w.commands.run("saveJob"));
    window.choose(sheet);
    window.answer("Keep it");
    assertThat(Files.readString(sheet)).endsWith("by hand\"\n");

    window.begin(w -> w.commands.run("saveJob"));
    window.choose(other);
    window.answer("Replace");
    assertThat(Files.readString(other)).isEqualTo(SHEET + "notes = \"hums\"\n");
    assertThat(window.<Boolean>ask(w -> w.model.job.isUnsaved())).isFalse();
  }

  @Test
  void aSheetSavedForTheFirstTimeStaysWhenALogIsOpenedOrDropped() throws Exception {
    Path bare = Files.createDirectory(folder.resolve("bare"));
    window.open(Files.copy(folder.resolve("capture.csv.gz"), bare.resolve("capture.csv.gz")));
    assertThat(window.<String>ask(w -> words(named(all(w), "verdict.next"))))
        .startsWith("Where the wheel stands was not judged: ")
        .contains("Whether the sparks leave at the commanded angle was not judged: ");
    Path log = Files.writeString(bare.resolve("controller.csv"), LOG);
    note("hums");
    window.on(w -> w.files.writeJob(bare.resolve("job.toml")));
    window.begin(w -> w.commands.run("openLog"));
    window.choose(log);
    assertThat(shown())
        .isEqualTo(
            new Request(
                bare.resolve("capture.csv.gz"),
                Optional.of(bare.resolve("job.toml")),
                Optional.of(log)));
    Path second =
        Files.writeString(Files.createDirectory(bare.resolve("2")).resolve("controller.csv"), LOG);
    note("hums on");
    window.begin(w -> w.files.openDropped(List.of(second)));
    window.answer("Save…");
    window.choose(bare.resolve("other.toml"));
    assertThat(shown().job()).contains(bare.resolve("other.toml"));
    assertThat(shown().log()).contains(second);
    assertThat(notice()).isEmpty();
    assertThat(window.<String>ask(w -> w.model.job.draft.get().get(Field.NOTES)))
        .isEqualTo("hums on");
  }

  @Test
  void aSheetThatCouldNotBeOpenedAgainIsNotWritten() throws Exception {
    window.on(w -> type(w, Field.PATTERN, "36-x"));
    window.on(w -> w.files.writeJob(sheet));
    assertThat(notice())
        .isEqualTo(
            "The job sheet could not be used.\njob.toml, line 3: wheel.pattern: \"36-x\" is not a"
                + " wheel; write slots-missing, such as 36-1, 60-2, 12+1 or 36-2-2-2");
    assertThat(sheet).hasContent(SHEET);
  }

  @Test
  void aSheetWithAByteOrderMarkIsSavedInItsPlaceWithoutAQuestion() throws Exception {
    Files.writeString(sheet, "\uFEFF" + SHEET);
    window.open(folder.resolve("capture.csv.gz"));
    note("hums");
    window.on(w -> w.files.writeJob(sheet));
    assertThat(Files.readString(sheet)).isEqualTo(SHEET + "notes = \"hums\"\n");
  }

  @Test
  void closingWithUnsavedNotesAsksAndMayBeCalledOff() {
    note("call back on Friday");
    window.pressClose();
    window.answer("Stay here");
    assertThat(isOpen()).isTrue();
    window.pressClose();
    window.answer("Do not save");
    assertThat(isOpen()).isFalse();
    assertThat(sheet).hasContent(SHEET);
  }

  @Test
  void closingWithUnsavedNotesSavesThemWhenAskedTo() throws Exception {
    note("call back on Friday");
    window.pressClose();
    window.answer("Save…");
    window.chooseNothing();
    assertThat(isOpen()).isTrue();
    window.pressClose();
    window.answer("Save…");
    window.choose(sheet);
    assertThat(isOpen()).isFalse();
    assertThat(JobSheetReader.read(sheet).heading().notes()).isEqualTo("call back on Friday");
  }

  @Test
  void closingWithNothingToSaveAsksNothing() {
    window.pressClose();
    assertThat(isOpen()).isFalse();
  }
}
