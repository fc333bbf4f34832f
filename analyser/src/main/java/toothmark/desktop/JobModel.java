package toothmark.desktop;

import java.nio.file.Path;
import java.util.Optional;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetText;

/** The job sheet while it is being typed: checked at once, asked for when it is right. */
final class JobModel {

  private History<JobDraft> history = new History<>(JobDraft.empty(Path.of("")));

  /** The draft now. */
  final Watched<JobDraft> draft = new Watched<>(history.now());

  /** What is wrong with it. */
  final Watched<Optional<JobDraft.Fault>> fault = new Watched<>(Optional.empty());

  /** The last draft that was right. */
  final Watched<JobSheet> asked = new Watched<>(JobSheet.empty());

  /** The draft that the file holds. */
  final Watched<JobDraft> saved = new Watched<>(history.now());

  /** A sheet that cannot be read, as it is written; empty when it can. */
  final Watched<Optional<JobSheetText>> unreadable = new Watched<>(Optional.empty());

  /** The text that was last read from the file or written to it; empty before there is one. */
  private Optional<JobSheetText> onDisk = Optional.empty();

  /** The text that came with what is open. */
  private JobSheetText read = history.now().opened().text();

  /** What was typed of the sheet that was open before, which may come back. */
  private Optional<State> before = Optional.empty();

  /** How far a sheet has come. */
  private record State(
      JobSheetText read,
      History<JobDraft> history,
      JobDraft saved,
      Optional<JobSheetText> onDisk,
      Optional<JobSheetText> unreadable,
      JobSheet asked) {

    boolean isOf(Session s) {
      return read == s.given().text();
    }
  }

  /** Takes the sheet of a session; of the session that was open before as it was left. */
  void opened(Session s) {
    State next = before.filter(b -> b.isOf(s)).orElseGet(() -> read(s));
    before =
        Optional.of(new State(read, history, saved.get(), onDisk, unreadable.get(), asked.get()));
    read = next.read();
    onDisk = next.onDisk();
    history = next.history();
    saved.set(next.saved());
    fault.set(history.now().fault());
    draft.set(history.now());
    unreadable.set(next.unreadable());
    asked.set(next.asked());
  }

  private static State read(Session s) {
    JobSheetText text = s.given().text();
    Optional<JobSheetText> file = s.request().job().map(f -> text);
    try {
      JobDraft d = JobDraft.of(text);
      return new State(text, new History<>(d), d, file, Optional.empty(), s.given().sheet());
    } catch (JobSheetException e) {
      JobDraft d = JobDraft.empty(text.folder());
      return new State(text, new History<>(d), d, Optional.empty(), file, s.given().sheet());
    }
  }

  /** Takes the sheet that could not be read as it was mended by hand. */
  void mend(JobSheetText mended) throws JobSheetException {
    JobDraft next = JobDraft.of(mended);
    onDisk = unreadable.get();
    unreadable.set(Optional.empty());
    edit(next);
  }

  /** The file that the sheet was read from or written to last. */
  Optional<Path> file() {
    return onDisk.map(JobSheetText::file);
  }

  /** Whether a text is what the file was known to hold. */
  boolean isKnown(Path file, String text) {
    Path whole = file.toAbsolutePath().normalize();
    return onDisk
        .filter(t -> t.file().toAbsolutePath().normalize().equals(whole))
        .filter(t -> t.toml().equals(text))
        .isPresent();
  }

  void saved(JobDraft written, JobSheetText text) {
    onDisk = Optional.of(text);
    saved.set(written);
  }

  boolean isUnsaved() {
    return !saved.get().equals(draft.get());
  }

  /** A step of its own. */
  void edit(JobDraft next) {
    edit(next, new Object());
  }

  /** A step that is one with those before it of the same mark. */
  void edit(JobDraft next, Object merge) {
    history.step(next, merge);
    changed();
  }

  void undo() {
    history.undo();
    changed();
  }

  void redo() {
    history.redo();
    changed();
  }

  boolean canUndo() {
    return history.canUndo();
  }

  boolean canRedo() {
    return history.canRedo();
  }

  private void changed() {
    JobDraft now = history.now();
    fault.set(now.fault());
    draft.set(now);
    if (fault.get().isEmpty()) {
      try {
        asked.set(now.sheet());
      } catch (JobSheetException e) {
        throw new IllegalStateException("a sheet without fault was refused", e);
      }
    }
  }
}
