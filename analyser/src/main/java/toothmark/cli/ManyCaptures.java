package toothmark.cli;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.report.IndexEntry;
import toothmark.report.ResultFolder;
import toothmark.report.ResultReader;
import toothmark.timing.ControllerLog;
import toothmark.timing.ControllerLogReader;
import toothmark.units.ShortNames;

/**
 * Examines several captures at once, each into a folder of its own.
 *
 * <p>One thread for each processor; samples are held in files by the readers, so the heap grows
 * with the number of threads and not with that of captures. A capture that cannot be examined does
 * not stop the others.
 */
final class ManyCaptures {

  private final List<Planned> captures;
  private final Path folder;
  private final ResultFolder.Page page;

  /**
   * Plans a run.
   *
   * @param captures in the order to list
   * @param folder where the result folders go
   * @param page in which forms to write each report
   */
  ManyCaptures(List<Planned> captures, Path folder, ResultFolder.Page page) {
    this.captures = List.copyOf(captures);
    this.folder = folder;
    this.page = page;
  }

  /**
   * A capture and what goes with it.
   *
   * @param file the capture
   * @param sheet its job sheet
   * @param log what its controller logged
   */
  record Planned(Path file, JobSheet sheet, Optional<Path> log) {}

  /**
   * Examines all of them.
   *
   * @param progress told of each capture that is done
   * @return one entry for each capture, in their order
   */
  List<IndexEntry> examine(Progress progress) throws InterruptedException {
    List<String> names = folderNames();
    int threads = Math.min(captures.size(), Runtime.getRuntime().availableProcessors());
    ExecutorService workers = Executors.newFixedThreadPool(threads);
    try {
      List<Future<IndexEntry>> running = new ArrayList<>();
      for (int i = 0; i < captures.size(); i++) {
        running.add(workers.submit(task(captures.get(i), names.get(i), progress)));
      }
      List<IndexEntry> entries = new ArrayList<>();
      for (Future<IndexEntry> f : running) {
        entries.add(result(f));
      }
      return entries;
    } finally {
      workers.shutdownNow();
    }
  }

  private Callable<IndexEntry> task(Planned capture, String name, Progress progress) {
    return () -> {
      IndexEntry entry = one(capture, name);
      progress.examined(capture.file(), captures.size());
      return entry;
    };
  }

  private static IndexEntry result(Future<IndexEntry> done) throws InterruptedException {
    try {
      return done.get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private IndexEntry one(Planned capture, String name) {
    String file = capture.file().toString();
    ReadingOptions options = ReadingOptions.withDefaults().withLayout(capture.sheet().layout());
    try (Capture read = CaptureReader.read(capture.file(), options)) {
      Optional<ControllerLog> log =
          capture.log().isPresent()
              ? Optional.of(ControllerLogReader.read(capture.log().get()))
              : Optional.empty();
      Examination examination = Examiner.examine(read, capture.sheet(), log);
      ResultFolder.write(examination, folder.resolve(name), page);
      boolean decoded = examination.observations().crank().isPresent();
      return new IndexEntry(
          file,
          Optional.of(name),
          decoded ? 0 : Failures.NOT_DECODABLE,
          Optional.of(ResultReader.read(folder.resolve(name))),
          "");
    } catch (Exception e) { // whatever one capture does, the others go on
      Failures.Failure f = Failures.Failure.ofAny(e);
      return new IndexEntry(file, Optional.empty(), f.code(), Optional.empty(), f.message());
    }
  }

  /**
   * Named after the captures and the folders that tell them apart, with a number where two would
   * share a name all the same.
   */
  private List<String> folderNames() {
    Set<String> taken = new HashSet<>();
    List<String> names = new ArrayList<>();
    for (String capture : shortNames()) {
      Path flat = Path.of(capture.replace(File.separatorChar, '-'));
      String stem = ExamineCommand.folderNamedAfter(flat).toString();
      String name = stem;
      for (int n = 2; !taken.add(name.toLowerCase(Locale.ROOT)); n++) {
        name = stem + "-" + n;
      }
      names.add(name);
    }
    return names;
  }

  private List<String> shortNames() {
    return ShortNames.of(captures.stream().map(Planned::file).toList());
  }
}
