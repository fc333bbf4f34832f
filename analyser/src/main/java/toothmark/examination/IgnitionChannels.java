package toothmark.examination;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.ignition.Coil;
import toothmark.rotation.AngleTimeline;
import toothmark.units.CrankAngle;

/**
 * Which channels are coils, and which marks top dead centre: from the job sheet, else by how they
 * sit on the turning crank.
 *
 * @param tdc the channel that rises at top dead centre
 * @param coils the coils, with their channels
 * @param assumption what was assumed, one sentence; empty text when the job sheet said all
 */
record IgnitionChannels(Optional<Channel> tdc, List<JobSheet.CoilEntry> coils, String assumption) {

  private static final double BEFORE_TDC = 90;

  static IgnitionChannels find(
      Capture capture,
      JobSheet sheet,
      Channel crank,
      FirstLooks looks,
      Optional<AngleTimeline> angle)
      throws JobSheetException {
    Optional<Channel> tdc = Optional.empty();
    if (sheet.channels().tdc().isPresent()) {
      String name = sheet.channels().tdc().get();
      tdc = Optional.of(CrankChannel.named(capture, name, "channels.tdc"));
    }
    for (JobSheet.CoilEntry c : sheet.coils()) {
      CrankChannel.named(capture, c.channel(), "coils.channel");
    }
    if (areStated(sheet) || angle.isEmpty()) {
      return new IgnitionChannels(tdc, sheet.coils(), "");
    }
    List<SwitchingChannel> seen = new ArrayList<>();
    for (Channel c : capture.channels()) {
      if (c != crank) {
        SwitchingChannel.of(c, looks.at(c), angle.get()).ifPresent(seen::add);
      }
    }
    return guess(seen);
  }

  /** Whether the job sheet names any, and none is to be guessed. */
  static boolean areStated(JobSheet sheet) {
    return sheet.channels().tdc().isPresent() || !sheet.coils().isEmpty();
  }

  private static IgnitionChannels guess(List<SwitchingChannel> seen) {
    List<SwitchingChannel> others = seen.stream().filter(c -> !c.looksLikeCam()).toList();
    Optional<SwitchingChannel> mark =
        seen.stream()
            .filter(c -> !c.looksLikeCam() && c.looksLikeMark(others))
            .min(Comparator.comparingDouble(SwitchingChannel::markScore));
    double zero = mark.map(SwitchingChannel::rise).orElse(0.0) + BEFORE_TDC;
    List<SwitchingChannel> coils =
        seen.stream()
            .filter(c -> mark.filter(m -> m == c).isEmpty() && c.looksLikeCoil())
            .sorted(Comparator.comparingDouble(c -> CrankAngle.wrap(c.fall() - zero + 180)))
            .toList();
    List<JobSheet.CoilEntry> entries = entries(coils);
    return new IgnitionChannels(
        mark.map(SwitchingChannel::channel), entries, sentence(mark, entries));
  }

  /** Coils that fire in turn share the customary order among them. */
  private static List<JobSheet.CoilEntry> entries(List<SwitchingChannel> coils) {
    int each = coils.stream().mapToInt(SwitchingChannel::cylinders).max().orElse(1);
    List<Integer> firing = FiringOrders.customary(each * coils.size());
    List<JobSheet.CoilEntry> entries = new ArrayList<>();
    for (int i = 0; i < coils.size(); i++) {
      List<Integer> own = new ArrayList<>();
      for (int k = i; k < firing.size(); k += coils.size()) {
        own.add(firing.get(k));
      }
      Coil coil = new Coil("coil " + (i + 1), own, coils.get(i).pickUp());
      entries.add(new JobSheet.CoilEntry(coil, coils.get(i).channel().name()));
    }
    return entries;
  }

  private static String sentence(Optional<SwitchingChannel> mark, List<JobSheet.CoilEntry> coils) {
    List<String> said = new ArrayList<>();
    mark.ifPresent(m -> said.add(CrankChannel.BOOK.of("tdc", m.channel().name())));
    for (JobSheet.CoilEntry c : coils) {
      int sparks = c.coil().cylinders().size();
      String key = sparks == 1 ? "coil.cycle" : sparks == 2 ? "coil.turn" : "coil.more";
      said.add(CrankChannel.BOOK.of(key, c.channel(), c.coil().name(), sparks));
    }
    return String.join(" ", said);
  }
}
