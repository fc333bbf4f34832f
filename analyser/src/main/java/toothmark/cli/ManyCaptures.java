package toothmark.cli;

import java.io.IOException;
import java.nio.file.Files;
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
import java.util.stream.Stream;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.report.IndexEntry;
import toothmark.report.ResultFolder;
import toothmark.report.ResultReader;

/**
 * Examines several captures at once, each into a folder of its own.
 *
 * <p>One thread for each processor; samples are held in files by the readers, so the heap grows
 * with the number of threads and not with that of captures. A capture that cannot be examined does
 * not stop the others.
 */
final class ManyCaptures {

  /** What stands beside captures in a folder and is none. */
  private static final Set<String> NO_CAPTURES =
      Set.of("toml", "json", "html", "pdf", "md", "png", "jpg", "svg");

  private final List<Path> captures;
  private final JobSheet sheet;
  private final Path folder;
  private final ResultFolder.Page page;

  /**
   * Plans a run.
   *
   * @param captures the files, in the order to list
   * @param sheet job sheet of all of them
   * @param folder where the result folders go
   * @param page in which forms to write each report
   */
  ManyCaptures(List<Path> captures, JobSheet sheet, Path folder, ResultFolder.Page page) {
    this.captures = List.copyOf(captures);
    this.sheet = sheet;
    this.folder = folder;
    this.page = page;
  }

  /**
   * The captures that are meant: files as they are, and of a folder the files in it, by name.
   *
   * @throws IOException if a folder cannot be read
   */
  static List<Path> in(List<Path> named) throws IOException {
    List<Path> all = new ArrayList<>();
    for (Path path : named) {
      if (!Files.isDirectory(path)) {
        all.add(path);
        continue;
      }
      try (Stream<Path> files = Files.list(path)) {
        files.filter(ManyCaptures::mayBeCapture).sorted().forEach(all::add);
      }
    }
    return all;
  }

  private static boolean mayBeCapture(Path file) {
    String name = file.getFileName().toString();
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return Files.isRegularFile(file) && !name.startsWith(".") && !NO_CAPTURES.contains(ending);
  }

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

  private Callable<IndexEntry> task(Path capture, String name, Progress progress) {
    return () -> {
      IndexEntry entry = one(capture, name);
      progress.examined(capture, captures.size());
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

  private IndexEntry one(Path capture, String name) {
    ReadingOptions options = ReadingOptions.withDefaults().withLayout(sheet.layout());
    try (Capture read = CaptureReader.read(capture, options)) {
      Examination examination = Examiner.examine(read, sheet, Optional.empty());
      ResultFolder.write(examination, folder.resolve(name), page);
      boolean decoded = examination.observations().crank().isPresent();
      return new IndexEntry(
          capture.toString(),
          Optional.of(name),
          decoded ? 0 : Failures.NOT_DECODABLE,
          Optional.of(ResultReader.read(folder.resolve(name))),
          "");
    } catch (Exception e) { // whatever one capture does, the others go on
      Failures.Failure f = Failures.Failure.ofAny(e);
      return new IndexEntry(
          capture.toString(), Optional.empty(), f.code(), Optional.empty(), f.message());
    }
  }

  /** Named after the captures, with a number where two would share a name. */
  private List<String> folderNames() {
    Set<String> taken = new HashSet<>();
    List<String> names = new ArrayList<>();
    for (Path capture : captures) {
      String stem = ExamineCommand.folderNamedAfter(capture).toString();
      String name = stem;
      for (int n = 2; !taken.add(name.toLowerCase(Locale.ROOT)); n++) {
        name = stem + "-" + n;
      }
      names.add(name);
    }
    return names;
  }
}
