package toothmark.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.Stream;
import toothmark.examination.Examination;

/**
 * A folder that holds one examination.
 *
 * <p>All files are written into a temporary folder first and moved in together, so that the folder
 * holds the earlier examination or the new one, never a mixture and never half a file. Files of
 * other names in it are left alone.
 */
public final class ResultFolder {

  /** The page to read; all others are for programs. */
  public static final String PAGE = "report.html";

  private static final String ASIDE = "earlier";

  private static final List<Product> PRODUCTS =
      List.of(
          new Product(OutlineReader.TEETH, ResultTables::teeth),
          new Product(OutlineReader.SPARKS, ResultTables::sparks),
          new Product("receiver-edges.csv", ResultTables::receiverEdges),
          new Product("sync-losses.csv", ResultTables::syncLosses),
          new Product(OutlineReader.WHEEL, ResultTables::wheel),
          new Product(OutlineReader.TURNS, ResultTables::turns),
          new Product(PAGE, ReportHtml::write),
          new Product("examination.json", ExaminationJson::write));

  private static final Product DOCUMENT = new Product("report.pdf", ReportPdf::write);

  /** In which forms the page is written. */
  public enum Page {
    /** To read in a browser. */
    HTML,
    /** And as a document to print or to send, {@code report.pdf}. */
    HTML_AND_PDF
  }

  private ResultFolder() {}

  /**
   * The names of the files that every examination consists of.
   *
   * @return in the order in which they are written
   */
  public static List<String> fileNames() {
    return PRODUCTS.stream().map(Product::name).toList();
  }

  /** Every name that an examination may use. */
  private static List<String> ownNames() {
    return Stream.of(PRODUCTS, List.of(DOCUMENT)).flatMap(List::stream).map(Product::name).toList();
  }

  /**
   * Loads typeface and charts on a thread of its own, so that the first page of a process need not
   * wait for them. Returns at once; calling it is never needed.
   */
  public static void prepare() {
    Thread thread = new Thread(FigureSvg::warmUp, "toothmark-charts");
    thread.setDaemon(true);
    // whoever draws finds out by himself; a process that ends meanwhile has nothing to tell
    thread.setUncaughtExceptionHandler((t, e) -> {});
    thread.start();
  }

  /**
   * Refuses a folder in which a result would take the place of a file that is read.
   *
   * @param folder where results are to go, there or not
   * @param inputs files that must outlive the run
   * @throws FileAlreadyExistsException naming the input that bears a result's name
   * @throws IOException if a file could not be looked at
   */
  public static void mustSpare(Path folder, List<Path> inputs) throws IOException {
    for (String name : ownNames()) {
      Path result = folder.resolve(name);
      for (Path input : inputs) {
        if (Files.exists(result) && Files.exists(input) && Files.isSameFile(result, input)) {
          throw new FileAlreadyExistsException(
              input.toString(), null, "would be replaced by a result; choose another folder");
        }
      }
    }
  }

  /**
   * Writes an examination, replacing an earlier one in that folder.
   *
   * @param examination what to write
   * @param folder made when missing, its parents too
   * @return the files written, the page first
   * @throws NotDirectoryException if something that is no folder bears its name
   * @throws FileAlreadyExistsException if a folder bears the name of a result file
   * @throws IOException if writing failed; the folder then holds what it held before
   */
  public static List<Path> write(Examination examination, Path folder) throws IOException {
    return write(examination, folder, Page.HTML);
  }

  /**
   * Writes an examination, replacing an earlier one in that folder.
   *
   * @param examination what to write
   * @param folder made when missing, its parents too
   * @param page in which forms
   * @return the files written, the page first
   * @throws NotDirectoryException if something that is no folder bears its name
   * @throws FileAlreadyExistsException if a folder bears the name of a result file
   * @throws IOException if writing failed; the folder then holds what it held before
   */
  public static List<Path> write(Examination examination, Path folder, Page page)
      throws IOException {
    List<Product> products = products(page);
    Path absolute = folder.toAbsolutePath().normalize();
    if (Files.isDirectory(absolute)) {
      refuseFoldersInTheWay(absolute);
      Path draft = Files.createTempDirectory(absolute, ".toothmark-");
      orDiscard(draft, () -> fill(draft, products, examination), () -> swapIn(draft, absolute));
    } else if (Files.exists(absolute, LinkOption.NOFOLLOW_LINKS)) {
      throw new NotDirectoryException(folder.toString());
    } else {
      Path parent = WholeFile.folder(absolute.getParent());
      Path draft = Files.createDirectory(parent.resolve(freeName(absolute)));
      orDiscard(draft, () -> fill(draft, products, examination), () -> Files.move(draft, absolute));
    }
    List<Path> written = new ArrayList<>();
    written.add(folder.resolve(PAGE));
    products.stream()
        .map(Product::name)
        .filter(n -> !n.equals(PAGE))
        .map(folder::resolve)
        .forEach(written::add);
    return written;
  }

  private static List<Product> products(Page page) {
    List<Product> products = new ArrayList<>(PRODUCTS);
    if (page == Page.HTML_AND_PDF) {
      products.add(DOCUMENT);
    }
    return products;
  }

  private static void refuseFoldersInTheWay(Path folder) throws IOException {
    for (String name : ownNames()) {
      if (Files.isDirectory(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
        throw new FileAlreadyExistsException(
            folder.resolve(name).toString(), null, "a folder stands where a result file belongs");
      }
    }
  }

  /** Not by {@code createTempDirectory}, whose folders are closed to other users. */
  private static String freeName(Path folder) {
    return ".toothmark-" + folder.getFileName() + "-" + Long.toHexString(System.nanoTime());
  }

  /** Tables are written beside the page, which takes as long as all of them. */
  private static void fill(Path draft, List<Product> products, Examination examination)
      throws IOException {
    CompletableFuture<Void> tables =
        CompletableFuture.runAsync(
            () -> {
              try {
                write(draft, products.stream().filter(p -> !p.isPage()).toList(), examination);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
    try {
      write(draft, products.stream().filter(Product::isPage).toList(), examination);
    } finally {
      join(tables);
    }
  }

  private static void join(CompletableFuture<Void> writing) throws IOException {
    try {
      writing.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof UncheckedIOException io) {
        throw io.getCause();
      }
      if (e.getCause() instanceof RuntimeException other) {
        throw other;
      }
      throw e;
    }
  }

  private static void write(Path draft, List<Product> products, Examination examination)
      throws IOException {
    for (Product p : products) {
      try (OutputStream out =
          new BufferedOutputStream(Files.newOutputStream(draft.resolve(p.name())), 1 << 16)) {
        p.writer().write(examination, out);
      }
    }
  }

  private static void orDiscard(Path draft, Step... steps) throws IOException {
    try {
      for (Step step : steps) {
        step.run();
      }
    } catch (IOException | RuntimeException | Error e) {
      discard(draft, e);
      throw e;
    }
  }

  /** Moves earlier files aside and the new ones in; on failure moves everything back. */
  private static void swapIn(Path draft, Path folder) throws IOException {
    Path aside = Files.createDirectory(draft.resolve(ASIDE));
    Deque<Move> done = new ArrayDeque<>();
    try {
      for (String name : ownNames()) {
        if (Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
          move(new Move(folder.resolve(name), aside.resolve(name)), done);
        }
      }
      for (String name : ownNames()) {
        if (Files.exists(draft.resolve(name))) {
          move(new Move(draft.resolve(name), folder.resolve(name)), done);
        }
      }
    } catch (IOException | RuntimeException e) {
      undo(done, e);
      throw e;
    }
    for (String name : ownNames()) {
      Files.deleteIfExists(aside.resolve(name));
    }
    Files.delete(aside);
    Files.delete(draft);
  }

  private static void move(Move move, Deque<Move> done) throws IOException {
    Files.move(move.from(), move.to());
    done.push(move);
  }

  private static void undo(Deque<Move> done, Exception cause) {
    while (!done.isEmpty()) {
      Move move = done.pop();
      try {
        Files.move(move.to(), move.from());
      } catch (IOException e) {
        cause.addSuppressed(e);
      }
    }
  }

  /** Deletes a draft, but never an earlier file that could not be moved back. */
  private static void discard(Path draft, Throwable cause) {
    try {
      for (String name : ownNames()) {
        Files.deleteIfExists(draft.resolve(name));
      }
      Files.deleteIfExists(draft.resolve(ASIDE));
      Files.deleteIfExists(draft);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }

  private record Product(String name, Writer writer) {

    boolean isPage() {
      return name.equals(PAGE) || this == DOCUMENT;
    }
  }

  private record Move(Path from, Path to) {}

  private interface Writer {
    void write(Examination examination, OutputStream out) throws IOException;
  }

  private interface Step {
    void run() throws IOException;
  }
}
