package toothmark.desktop;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.Function;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.chart.SignalPyramid;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;

/**
 * Opens and examines captures away from the thread of the window.
 *
 * <p>One thing is done at a time; a new order makes the one before void, and what a void one finds
 * is thrown away. All listeners are told on the thread of the window.
 */
final class Bench {

  private static final long GROWN_EVERY_NANOS = 200_000_000L;

  /** Of a file from this size on, the start is shown while the rest is read. */
  private static final long LONG_FILE_BYTES = 8L << 20;

  private static final long START_BYTES = 2L << 20;

  private final Executor background;
  private final Executor aside;
  private final Executor window;
  private final AtomicLong order = new AtomicLong();

  /** What waits until no work is under way beside. */
  private final List<Runnable> waiting = new ArrayList<>();

  /** What is in view of a file that is not examined yet. */
  private Optional<Start> start = Optional.empty();

  /** What is being done. */
  final Watched<Optional<Progress>> progress = new Watched<>(Optional.empty());

  /** What is open. */
  final Watched<Optional<Session>> session = new Watched<>(Optional.empty());

  /** Counts up while the curves in view grow. */
  final Watched<Integer> grown = new Watched<>(0);

  /** What was compared last. */
  final Watched<Optional<Compared>> compared = new Watched<>(Optional.empty());

  /** How many pieces of work are under way beside. */
  final Watched<Integer> asides = new Watched<>(0);

  /** What went wrong last; empty once something goes right. */
  final Watched<Optional<Complaint>> complaint = new Watched<>(Optional.empty());

  /**
   * How far something has come.
   *
   * @param doing what is being done
   * @param share from 0 to 1; negative when not known
   */
  record Progress(String doing, double share) {}

  /** Reads and examines on one executor, does small work on another, and tells on the third. */
  Bench(Executor background, Executor aside, Executor window) {
    this.background = background;
    this.aside = aside;
    this.window = window;
  }

  /** Opens a capture; what is open stays until the new one is there. */
  void open(Request request) {
    begin(Phrases.of("progress.reading", name(request)), request, mine -> read(mine, request));
  }

  /** Examines what is open by another sheet; the examination in view stays until then. */
  void examine(JobSheet sheet) {
    session
        .get()
        .ifPresent(
            s ->
                begin(
                    Phrases.of("progress.examining"),
                    s.request(),
                    mine -> examine(mine, s, sheet)));
  }

  /** Compares an earlier capture with what is open; by the sheet of that where it has none. */
  void compare(Request earlier) {
    session
        .get()
        .filter(s -> s.examination().isPresent())
        .ifPresent(
            s -> {
              Compared.Side after = new Compared.Side(s.request(), s.examination().get());
              begin(
                  Phrases.of("progress.reading", name(earlier)),
                  earlier,
                  mine -> compare(mine, after, earlier));
            });
  }

  /** Stops what is being done; what is open stays. */
  void cancel() {
    order.incrementAndGet();
    goBack();
  }

  /** Ends what was being done without a result. */
  private void goBack() {
    progress.set(Optional.empty());
    start.ifPresent(
        s -> {
          start = Optional.empty();
          session.set(s.before());
          close(s.shown());
        });
  }

  /**
   * Does a piece of work away from the window's thread, beside reading and examining. No capture
   * that it may read is closed before it ends. Work that was called off has no result.
   *
   * @param wrong says what its failure means
   * @param work gives a result
   * @param then takes it, on the window's thread
   */
  <T> void aside(Function<Throwable, Complaint> wrong, Callable<T> work, Consumer<T> then) {
    asides.set(asides.get() + 1);
    aside.execute(
        () -> {
          Runnable told = told(wrong, work, then);
          window.execute(
              () -> {
                asides.set(asides.get() - 1);
                told.run();
                rest();
              });
        });
  }

  /** Does something once no work is under way beside. */
  void afterAsides(Runnable what) {
    waiting.add(what);
    rest();
  }

  private void rest() {
    if (asides.get() == 0) {
      List<Runnable> now = List.copyOf(waiting);
      waiting.clear();
      now.forEach(Runnable::run);
    }
  }

  private void close(Session s) {
    afterAsides(s.capture()::close);
  }

  private <T> Runnable told(
      Function<Throwable, Complaint> wrong, Callable<T> work, Consumer<T> then) {
    try {
      T result = work.call();
      return () -> then.accept(result);
    } catch (CancellationException e) {
      return () -> {};
    } catch (Exception | OutOfMemoryError e) {
      Complaint said = wrong.apply(e);
      return () -> complaint.set(Optional.of(said));
    }
  }

  private void begin(String doing, Request with, Order work) {
    cancel();
    progress.set(Optional.of(new Progress(doing, -1)));
    long mine = order.incrementAndGet(); // going back may have begun something of its own
    background.execute(() -> attempt(mine, e -> Complaint.of(name(with), e), () -> work.run(mine)));
  }

  private void attempt(long mine, Function<Throwable, Complaint> wrong, Work work) {
    try {
      if (mine == order.get()) {
        work.run();
      }
    } catch (CancellationException e) {
      tell(mine, this::goBack);
    } catch (Exception | OutOfMemoryError e) {
      Complaint said = wrong.apply(e);
      tell(
          mine,
          () -> {
            goBack();
            complaint.set(Optional.of(said));
          });
    }
  }

  private void read(long mine, Request request) throws Exception {
    Request.Given given = request.given();
    attempt(
        mine,
        e -> Complaint.of(name(request), e).and(given.leftOut()),
        () -> {
          Session recorded = recorded(mine, request, given);
          attempt(
              recorded,
              () -> {
                tellExamining(mine);
                Session examined = recorded.examined(() -> goOn(mine));
                window.execute(() -> replace(mine, examined));
              });
        });
  }

  /** Of a long file first the start comes into view, then all of it, while more is done. */
  private Session recorded(long mine, Request request, Request.Given given) throws Exception {
    ReadingOptions whole =
        ReadingOptions.withDefaults().withLayout(given.sheet().layout()).withProgress(heard(mine));
    if (Files.size(request.capture()) < LONG_FILE_BYTES) {
      Session all = Session.recorded(request, given, whole);
      attempt(all, () -> grow(mine, all));
      return all;
    }
    Session begun =
        shown(mine, Session.recorded(request, given, whole.withFirstBytes(START_BYTES)));
    return CaptureReader.isOnlyStart(begun.capture())
        ? shown(mine, Session.recorded(request, given, whole))
        : begun;
  }

  /** Shows what was read, and draws on while it is looked at. */
  private Session shown(long mine, Session begun) throws Exception {
    show(mine, begun);
    attempt(begun, () -> grow(mine, begun));
    return begun;
  }

  /** Lets all curves grow by turns, and now and then tells how far they are. */
  private void grow(long mine, Session s) {
    List<SignalPyramid> curves = s.growing();
    long next = System.nanoTime() + GROWN_EVERY_NANOS;
    boolean growing = true;
    while (growing) {
      growing = false;
      for (SignalPyramid c : curves) {
        goOn(mine);
        growing |= c.grow();
      }
      if (System.nanoTime() >= next) {
        next = System.nanoTime() + GROWN_EVERY_NANOS;
        tell(mine, () -> grown.set(grown.get() + 1));
      }
    }
    tell(mine, () -> grown.set(grown.get() + 1));
  }

  /** Does something with a capture, and closes it where that fails, unless it is in view. */
  private void attempt(Session recorded, Work work) throws Exception {
    try {
      work.run();
    } catch (Exception | Error e) {
      window.execute(
          () -> {
            if (start.map(Start::shown).filter(s -> s == recorded).isEmpty()) {
              close(recorded);
            }
          });
      throw e;
    }
  }

  private void tellExamining(long mine) {
    tell(mine, () -> progress.set(Optional.of(new Progress(Phrases.of("progress.examining"), -1))));
  }

  private void compare(long mine, Compared.Side after, Request earlier) throws Exception {
    Request.Given given = earlier.given();
    boolean isStated = !given.sheet().equals(JobSheet.empty());
    JobSheet sheet = isStated ? given.sheet() : after.examination().sheet();
    ReadingOptions options =
        ReadingOptions.withDefaults().withLayout(sheet.layout()).withProgress(heard(mine));
    try (Capture capture = CaptureReader.read(earlier.capture(), options)) {
      tellExamining(mine);
      Examination before = Examiner.examine(capture, sheet, given.log(), () -> goOn(mine));
      Compared found = Compared.of(new Compared.Side(earlier, before), after);
      tell(
          mine,
          () -> {
            done(given.leftOut());
            compared.set(Optional.of(found));
          });
    }
  }

  private void goOn(long mine) {
    if (mine != order.get()) {
      throw new CancellationException();
    }
  }

  /** What is in view of a file that is not examined yet, and what was there before. */
  private record Start(Session shown, Optional<Session> before) {}

  /** Shows what there is of a file while more is done. */
  private void show(long mine, Session begun) {
    window.execute(
        () -> {
          if (mine != order.get()) {
            close(begun);
            return;
          }
          Optional<Start> last = start;
          start = Optional.of(new Start(begun, last.map(Start::before).orElse(session.get())));
          session.set(Optional.of(begun));
          last.map(Start::shown).ifPresent(this::close);
        });
  }

  private void replace(long mine, Session next) {
    if (mine != order.get()) {
      close(next);
      return;
    }
    Optional<Session> before = start.map(Start::before).orElse(session.get());
    start = Optional.empty();
    done(next.given().leftOut());
    session.set(Optional.of(next));
    before.ifPresent(this::close);
  }

  private void examine(long mine, Session s, JobSheet sheet) throws Exception {
    Session next = s.with(Examiner.examine(s.capture(), sheet, s.given().log(), () -> goOn(mine)));
    tell(
        mine,
        () -> {
          done(Optional.empty());
          session.set(Optional.of(next));
        });
  }

  private void done(Optional<Complaint> told) {
    progress.set(Optional.empty());
    complaint.set(told);
  }

  private void tell(long mine, Runnable what) {
    window.execute(
        () -> {
          if (mine == order.get()) {
            what.run();
          }
        });
  }

  /** Listens to a reader until something else is to be done. */
  private Heard heard(long mine) {
    return new Heard(
        () -> mine != order.get(),
        share ->
            tell(
                mine, () -> progress.set(progress.get().map(p -> new Progress(p.doing(), share)))));
  }

  private static String name(Request request) {
    return String.valueOf(request.capture().getFileName());
  }

  private interface Order {
    void run(long mine) throws Exception;
  }

  private interface Work {
    void run() throws Exception;
  }
}
