package toothmark.desktop;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javax.swing.Action;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import toothmark.chart.Figure;
import toothmark.examination.Examination;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetReader;
import toothmark.examination.JobSheetText;
import toothmark.report.ResultFolder;
import toothmark.report.WholeFile;

/** Everything that goes into the window and out of it as a file. */
final class FileDoor {

  private static final String TO_FOLDER = "showFolder";

  private final DeskWindow window;
  private final RecentFiles recent;
  private Optional<Path> folder = Optional.empty();

  /** Where the bundled sample was copied to: no place to save to. */
  private Optional<Path> sample = Optional.empty();

  /** Shows a page that was written. */
  Consumer<Path> browser = Platform::browse;

  /** Shows a folder; empty where the platform cannot. */
  Optional<Consumer<Path>> opener = Platform.opener();

  /** What was written last. */
  private Optional<Path> written = Optional.empty();

  /** Opens more captures, each in a window of its own, side by side with this one. */
  Consumer<List<Request>> beside = Desk::openBeside;

  FileDoor(DeskWindow window, RecentFiles recent) {
    this.window = window;
    this.recent = recent;
  }

  void choose() {
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, "dialog.open");
    if (chooser.showOpenDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      open(chooser.getSelectedFile().toPath());
    }
  }

  /** One more capture, or several, side by side with what is open. */
  void chooseBeside() {
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, "dialog.beside");
    chooser.setMultiSelectionEnabled(true);
    if (chooser.showOpenDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      List<Path> chosen = Stream.of(chooser.getSelectedFiles()).map(File::toPath).toList();
      beside.accept(Request.of(chosen, Optional.empty()));
    }
  }

  /** Another job sheet or log for what is open. */
  void chooseCompanion(String key) {
    if (open().isEmpty() || !mayLeave()) {
      return;
    }
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, key);
    if (chooser.showOpenDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      Request now = open().orElseThrow();
      Optional<Path> chosen = Optional.of(chooser.getSelectedFile().toPath());
      window.model.bench.open(
          key.equals("dialog.log")
              ? new Request(now.capture(), now.job(), chosen)
              : new Request(now.capture(), chosen, now.log()));
    }
  }

  /** What is open, with its sheet where that was saved last. */
  private Optional<Request> open() {
    return window
        .model
        .bench
        .session
        .get()
        .map(Session::request)
        .map(r -> new Request(r.capture(), window.model.job.file().or(r::job), r.log()));
  }

  /** Another capture, of an earlier day, against what is open. */
  void chooseEarlier() {
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, "dialog.compare");
    if (window.model.examination().isPresent()
        && chooser.showOpenDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      window.model.bench.compare(Request.of(chooser.getSelectedFile().toPath()));
    }
  }

  void open(Path capture) {
    openRequest(Request.of(capture));
  }

  void openDropped(List<Path> paths) {
    if (Request.of(paths, open()).isEmpty()) {
      complain(new Complaint(Phrases.of("complaint.drop"), Phrases.of("complaint.drop.help")));
    } else if (mayLeave()) {
      List<Request> requests = Request.of(paths, open()); // the sheet may be saved only now
      take(requests.get(0));
      if (requests.size() > 1) {
        beside.accept(requests.subList(1, requests.size()));
      }
    }
  }

  /** Opens it unless what is open shall stay. */
  void openRequest(Request request) {
    if (mayLeave()) {
      take(request);
    }
  }

  /** What is open, as its files are now. */
  void openAgain() {
    open()
        .ifPresent(
            r -> {
              Request beside = Request.of(r.capture()); // may have come meanwhile
              openRequest(
                  new Request(r.capture(), r.job().or(beside::job), r.log().or(beside::log)));
            });
  }

  private void take(Request request) {
    folder = Optional.ofNullable(request.capture().toAbsolutePath().getParent());
    if (sample.filter(request.capture()::startsWith).isEmpty()) {
      recent.add(request.capture());
    }
    window.notice.putAway();
    window.trace.requestFocusInWindow();
    window.model.bench.open(request);
  }

  /** Opens the bundled sample from a copy, since a reader wants a file, and says what to see. */
  void openSample() {
    if (!mayLeave()) {
      return;
    }
    try {
      Path copy = Files.createTempDirectory("toothmark-sample-");
      copy.toFile().deleteOnExit();
      sample = Optional.of(copy);
      for (String name : List.of("capture.csv.gz", JobSheetReader.USUAL_NAME)) {
        Path file = copy.resolve(name);
        try (var in = FileDoor.class.getResourceAsStream("sample/" + name)) {
          Files.copy(in, file);
        }
        file.toFile().deleteOnExit();
      }
      window.model.bench.open(Request.of(copy.resolve("capture.csv.gz")));
      window.notice.say(Phrases.of("welcome"));
      window.trace.requestFocusInWindow();
    } catch (IOException e) {
      complain(Complaint.of("capture.csv.gz", e));
    }
  }

  /** A file that the job sheet names. */
  void chooseFor(JobDraft.Field field) {
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, "field." + field.path());
    if (chooser.showOpenDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      JobDraft now = window.model.job.draft.get();
      window.model.job.edit(now.withFile(field, chooser.getSelectedFile().toPath()));
    }
  }

  void saveJob() {
    Optional<Session> s = window.model.bench.session.get();
    if (s.isEmpty()) {
      return;
    }
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, "dialog.saveJob");
    Path usual = s.get().request().capture().resolveSibling(JobSheetReader.USUAL_NAME);
    Path file = open().flatMap(Request::job).orElse(usual.toAbsolutePath());
    chooser.setSelectedFile(
        sample.filter(file::startsWith).map(in -> file.getFileName()).orElse(file).toFile());
    if (chooser.showSaveDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      writeJob(chooser.getSelectedFile().toPath());
    }
  }

  /**
   * Writes the sheet whole or not at all; asks before it replaces a file that it did not open, or
   * that was changed since.
   */
  void writeJob(Path file) {
    JobDraft draft = window.model.job.draft.get();
    try {
      Path whole = file.toAbsolutePath();
      JobSheetText text = draft.text(whole.getParent());
      text.sheet(); // what would be refused when it is opened is not written
      if (isStranger(whole) && !mayReplace(file)) {
        return;
      }
      replace(whole, text.toml().getBytes(StandardCharsets.UTF_8));
      window.model.job.saved(
          draft, new JobSheetText(whole.getFileName().toString(), text.toml(), whole.getParent()));
      told("job.written", whole);
    } catch (IOException | JobSheetException e) {
      complain(Complaint.ofWriting(file.getFileName().toString(), e));
    }
  }

  private boolean isStranger(Path file) throws IOException {
    try {
      return Files.exists(file) && !window.model.job.isKnown(file, JobSheetText.read(file).toml());
    } catch (JobSheetException e) {
      return true;
    }
  }

  void saveReport() {
    if (window.model.examination().isEmpty()) {
      return;
    }
    JFileChooser chooser = chooser(JFileChooser.DIRECTORIES_ONLY, "dialog.report");
    if (chooser.showSaveDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      writeReport(chooser.getSelectedFile().toPath());
    }
  }

  void writeReport(Path into) {
    Examination examination = window.model.examination().orElseThrow();
    Request open = open().orElseThrow();
    List<Path> inputs =
        Stream.of(Optional.of(open.capture()), open.job(), open.log())
            .flatMap(Optional::stream)
            .toList();
    window.model.bench.aside(
        e -> Complaint.ofWriting(into.toString(), e),
        () -> {
          ResultFolder.mustSpare(into, inputs);
          return ResultFolder.write(examination, into, ResultFolder.Page.HTML_AND_PDF);
        },
        written -> show(written.get(0)));
  }

  private void show(Path page) {
    told("report.written", page);
    browser.accept(page);
  }

  /** Says what was written, and offers to show its folder. */
  private void told(String key, Path file) {
    written = Optional.of(file.toAbsolutePath());
    Action toFolder = window.commands.get(TO_FOLDER);
    toFolder.setEnabled(opener.isPresent());
    window.say(Phrases.of(key, file.toString()), toFolder.isEnabled() ? TO_FOLDER : "");
  }

  /** Shows the folder of what was written last, where the platform can. */
  void showFolder() {
    written.map(Path::getParent).ifPresent(in -> opener.ifPresent(o -> o.accept(in)));
  }

  /** Saves the figure in front. */
  void savePicture() {
    window
        .pictures
        .current()
        .ifPresent(
            shown ->
                shown.getValue().figure().ifPresent(f -> savePicture(f, shown.getKey() + ".svg")));
  }

  /** Asks where a figure goes; the ending of its name says the format. */
  void savePicture(Figure figure, String fileName) {
    save("dialog.picture", fileName, PictureFile::named, file -> PictureFile.bytes(figure, file));
  }

  /** Asks where a document goes. */
  void savePrint(Aid.Printed document) {
    save("dialog.print", "tape.pdf", file -> file, file -> document.bytes());
  }

  private void save(String title, String fileName, UnaryOperator<Path> named, Content content) {
    JFileChooser chooser = chooser(JFileChooser.FILES_ONLY, title);
    chooser.setSelectedFile(new File(fileName));
    if (chooser.showSaveDialog(window.frame) == JFileChooser.APPROVE_OPTION) {
      write(named.apply(chooser.getSelectedFile().toPath()), content);
    }
  }

  /** Writes a file whole or not at all; asks before it replaces one. */
  private void write(Path file, Content content) {
    try {
      byte[] bytes =
          content.bytes(file); // a name that says no format is refused before it is asked
      if (!Files.exists(file) || mayReplace(file)) {
        replace(file, bytes);
        told("file.written", file);
      }
    } catch (IOException e) {
      complain(Complaint.ofWriting(file.getFileName().toString(), e));
    }
  }

  /** No capture is ever changed, also where it was chosen by mistake. */
  private void replace(Path file, byte[] content) throws IOException {
    Optional<Path> capture = open().map(Request::capture);
    if (capture.isPresent() && Files.exists(file) && Files.isSameFile(file, capture.get())) {
      throw new FileAlreadyExistsException(file.toString(), null, Phrases.of("replace.capture"));
    }
    WholeFile.write(file, content);
  }

  private boolean mayReplace(Path file) {
    return answer(
            Phrases.of("replace.question", file.getFileName().toString()),
            "replace.yes",
            "replace.no")
        == 0;
  }

  /** Asks; the number of the answer that was chosen, negative for none. */
  private int answer(String question, String... keys) {
    Object[] answers = Arrays.stream(keys).map(Phrases::of).toArray();
    return JOptionPane.showOptionDialog(
        window.frame,
        question,
        Phrases.of("program"),
        JOptionPane.DEFAULT_OPTION,
        JOptionPane.QUESTION_MESSAGE,
        null,
        answers,
        answers[0]);
  }

  /** What a file will hold, which may depend on the ending of its name. */
  interface Content {
    byte[] bytes(Path file) throws IOException;
  }

  private JFileChooser chooser(int what, String title) {
    JFileChooser chooser = new JFileChooser(folder.map(Path::toFile).orElse(null));
    chooser.setFileSelectionMode(what);
    chooser.setDialogTitle(Phrases.of(title));
    return chooser;
  }

  private void complain(Complaint about) {
    window.model.bench.complaint.set(Optional.of(about));
  }

  /** Asks before words that were typed and not saved are lost. */
  private boolean mayLeave() {
    if (!window.model.job.isUnsaved()) {
      return true;
    }
    int answer = answer(Phrases.of("leave.question"), "leave.save", "leave.discard", "leave.stay");
    if (answer == 0) {
      saveJob();
      return !window.model.job.isUnsaved();
    }
    return answer == 1;
  }

  void close() {
    if (mayLeave()) {
      window.model.bench.cancel();
      window.frame.setVisible(false);
      window.model.bench.afterAsides(window.frame::dispose); // a report is written to its end
    }
  }
}
