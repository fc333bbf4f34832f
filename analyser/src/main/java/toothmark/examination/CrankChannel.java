package toothmark.examination;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeTrain;
import toothmark.units.WordBook;

/**
 * Finds the crank channel: the one that the job sheet names, else the one whose name says so, else
 * the one with the most edges.
 *
 * @param channel the crank channel
 * @param assumption what was assumed, one sentence; empty text when the job sheet names it
 */
record CrankChannel(Channel channel, String assumption) {

  /** What channels were taken for, where the job sheet does not say. */
  static final WordBook BOOK = new WordBook("toothmark.examination.examination");

  private static final List<String> WORDS =
      List.of("crank", "ckp", "kurbel", "cigue", "vilebrequin", "trigger");

  /** What is said of a coil's drive, which may be called a trigger too. */
  static final List<String> COIL_WORDS =
      List.of(
          "coil", "ign", "spark", "spule", "zünd", "zuend", "bobin", "allum", "encend", "chispa");

  /** An edge weaker than this share of its neighbours is no evidence of a wheel. */
  private static final double STRONG = 0.4;

  static CrankChannel find(Capture capture, JobSheet sheet) throws JobSheetException {
    List<Channel> channels = capture.channels();
    if (channels.size() == 1 && channels.get(0).signal() instanceof EventSignal) {
      return new CrankChannel(channels.get(0), "");
    }
    Optional<String> stated = sheet.channels().crank();
    if (stated.isPresent()) {
      return new CrankChannel(named(capture, stated.get(), "channels.crank"), "");
    }
    List<Channel> free = channels.stream().filter(c -> !taken(c, sheet)).toList();
    if (free.isEmpty()) {
      throw new JobSheetException(
          "the job sheet gives every channel of "
              + capture.file()
              + " another role; name channels.crank");
    }
    if (free.size() == 1) {
      return new CrankChannel(free.get(0), BOOK.of("crank.alone", free.get(0).name()));
    }
    List<Channel> byName = free.stream().filter(CrankChannel::saysCrank).toList();
    if (byName.size() == 1) {
      return new CrankChannel(byName.get(0), BOOK.of("crank.named", byName.get(0).name()));
    }
    Channel most = free.get(0);
    int edges = -1;
    for (Channel c : free) {
      int n = strongEdges(c);
      if (n > edges) {
        most = c;
        edges = n;
      }
    }
    return new CrankChannel(most, BOOK.of("crank.busiest", most.name(), edges));
  }

  /** The channel of a name that the job sheet uses. */
  static Channel named(Capture capture, String name, String key) throws JobSheetException {
    Optional<Channel> found = capture.channel(name);
    if (found.isEmpty()) {
      throw new JobSheetException(
          key
              + ": "
              + capture.file()
              + " has no channel \""
              + name
              + "\"; it has "
              + capture.channels().stream()
                  .map(c -> "\"" + c.name() + "\"")
                  .collect(Collectors.joining(", ")));
    }
    return found.get();
  }

  private static boolean saysCrank(Channel channel) {
    return says(channel, WORDS) && !says(channel, COIL_WORDS);
  }

  static boolean says(Channel channel, List<String> words) {
    String name = channel.name().toLowerCase(Locale.ROOT);
    return words.stream().anyMatch(name::contains);
  }

  private static boolean taken(Channel channel, JobSheet sheet) {
    return sheet.channels().tdc().filter(channel.name()::equals).isPresent()
        || sheet.coils().stream().anyMatch(c -> c.channel().equals(channel.name()));
  }

  private static int strongEdges(Channel channel) {
    EdgeTrain train = EdgeDetector.withDefaults().detect(channel.signal()).falling();
    int strong = 0;
    for (int i = 0; i < train.size(); i++) {
      strong += train.strength(i) >= STRONG ? 1 : 0;
    }
    return strong;
  }
}
