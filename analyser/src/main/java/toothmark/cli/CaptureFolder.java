package toothmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import toothmark.examination.JobSheet;
import toothmark.timing.ControllerLogReader;
import toothmark.timing.IgnitionTable;
import toothmark.timing.IgnitionTableReader;

/**
 * What lies in a folder of captures: the captures, and the controller logs and ignition tables
 * beside them, which look like captures and are none.
 */
final class CaptureFolder {

  /** Endings of what stands beside captures and is none. */
  private static final Set<String> NO_CAPTURES =
      Set.of("toml", "json", "html", "pdf", "md", "png", "jpg", "svg");

  private final List<Path> captures = new ArrayList<>();
  private final List<Path> logs = new ArrayList<>();
  private final List<String> passedOver = new ArrayList<>();
  private final JobSheet sheet;

  private CaptureFolder(JobSheet sheet) {
    this.sheet = sheet;
  }

  /**
   * Looks what is in a folder.
   *
   * @param folder read by name, without the folders in it
   * @param sheet job sheet of its captures; the ignition table that it names is no capture
   * @throws IOException if the folder or a file in it cannot be read
   */
  static CaptureFolder read(Path folder, JobSheet sheet) throws IOException {
    CaptureFolder found = new CaptureFolder(sheet);
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(CaptureFolder::mayBeCapture).sorted().toList()) {
        found.add(file);
      }
    }
    return found;
  }

  private static boolean mayBeCapture(Path file) {
    String name = file.getFileName().toString();
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return Files.isRegularFile(file) && !name.startsWith(".") && !NO_CAPTURES.contains(ending);
  }

  private void add(Path file) throws IOException {
    if (isTable(file)) {
      passedOver.add(file + ": not a capture but an ignition table");
    } else if (ControllerLogReader.isLog(file)) {
      logs.add(file);
    } else {
      captures.add(file);
    }
  }

  private boolean isTable(Path file) throws IOException {
    Optional<IgnitionTable> named = sheet.commanded().table();
    return named.isPresent() && Files.isSameFile(file, named.get().file())
        || IgnitionTableReader.isTable(file);
  }

  /** The captures, by name; the only log goes with the only capture. */
  List<ManyCaptures.Planned> captures() {
    Optional<Path> log = isPair() ? Optional.of(logs.get(0)) : Optional.empty();
    return captures.stream().map(c -> new ManyCaptures.Planned(c, sheet, log)).toList();
  }

  private boolean isPair() {
    return captures.size() == 1 && logs.size() == 1;
  }

  /** A line for each file that is no capture, and what becomes of it. */
  List<String> passedOver() {
    List<String> lines = new ArrayList<>(passedOver);
    for (Path log : logs) {
      lines.add(
          log
              + (isPair()
                  ? ": the controller log of " + captures.get(0).getFileName()
                  : ": not a capture but a controller log; examine its capture with --log"));
    }
    return lines;
  }
}
