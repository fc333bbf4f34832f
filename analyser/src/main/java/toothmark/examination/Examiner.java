package toothmark.examination;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.LongestPart;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.CrankEdges;
import toothmark.edges.DisturbanceScan;
import toothmark.edges.Disturbances;
import toothmark.edges.EdgeDetector;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.findings.Diagnostician;
import toothmark.findings.Observations;
import toothmark.ignition.CoilChannel;
import toothmark.ignition.CoilReader;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.FiringOrder;
import toothmark.receiver.FollowedWheel;
import toothmark.receiver.ReceiverEdges;
import toothmark.receiver.ReceiverTrace;
import toothmark.receiver.ReferenceReceiver;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.RotationMeasurement;
import toothmark.timing.CommandedAdvance;
import toothmark.timing.ControllerLog;
import toothmark.timing.FixedAdvance;
import toothmark.timing.IgnitionTable;
import toothmark.timing.LogMatcher;
import toothmark.timing.TableAdvance;
import toothmark.timing.TdcMark;
import toothmark.timing.TdcMarks;
import toothmark.timing.Timing;
import toothmark.timing.TimingInputs;
import toothmark.timing.TimingMeasurement;
import toothmark.timing.WheelSetting;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.WheelDecoder;
import toothmark.wheel.WheelIdentification;
import toothmark.wheel.WheelIdentifier;
import toothmark.wheel.WheelPattern;
import toothmark.wheel.WheelSearch;

/**
 * Runs the whole chain over a capture: edges, wheel, rotation, receiver, ignition, timing,
 * findings.
 *
 * <p>It decides nothing itself. Each stage gets the results of earlier ones and what the job sheet
 * states; a signal that cannot be decoded still gets its receiver, its pictures and its findings.
 */
public final class Examiner {

  /** From this share of a pitch on tooth 1 may have been taken for another. */
  private static final double SLOT_OFF = 0.7;

  private static final Timing NO_TIMING =
      new Timing(
          Timing.Reference.UNKNOWN,
          Optional.empty(),
          List.of(),
          List.of(),
          List.of(),
          Optional.empty(),
          List.of(),
          Optional.empty(),
          List.of(),
          Optional.empty(),
          Optional.empty());

  private final Capture capture;
  private final JobSheet sheet;
  private final Optional<ControllerLog> log;

  private final Runnable betweenStages;

  private Examiner(
      Capture capture, JobSheet sheet, Optional<ControllerLog> log, Runnable betweenStages) {
    this.capture = capture;
    this.sheet = sheet;
    this.log = log;
    this.betweenStages = betweenStages;
  }

  /**
   * Examines a capture.
   *
   * @param capture what was recorded
   * @param sheet what the user states
   * @param log what the controller logged; wins over a fixed advance of the sheet, and holds the
   *     loads for its ignition table
   * @return everything that was found; a crank signal that cannot be decoded is a normal result
   * @throws JobSheetException if the sheet does not fit the capture
   */
  public static Examination examine(Capture capture, JobSheet sheet, Optional<ControllerLog> log)
      throws JobSheetException {
    return examine(capture, sheet, log, () -> {});
  }

  /**
   * Examines a capture, unless it is called off.
   *
   * @param capture what was recorded
   * @param sheet what the user states
   * @param log what the controller logged; wins over a fixed advance of the sheet, and holds the
   *     loads for its ignition table
   * @param betweenStages called now and then; what it throws ends the examination
   * @return everything that was found; a crank signal that cannot be decoded is a normal result
   * @throws JobSheetException if the sheet does not fit the capture
   */
  public static Examination examine(
      Capture capture, JobSheet sheet, Optional<ControllerLog> log, Runnable betweenStages)
      throws JobSheetException {
    return new Examiner(LongestPart.of(capture), sheet, log, betweenStages).run();
  }

  /**
   * Decodes a capture and finds which channel is what, without a diagnosis.
   *
   * @param capture what was recorded
   * @param sheet what the user states
   * @return what it holds; a crank signal that cannot be decoded is a normal result
   * @throws JobSheetException if the sheet does not fit the capture
   */
  public static Glance glance(Capture capture, JobSheet sheet) throws JobSheetException {
    Capture part = LongestPart.of(capture);
    Examiner examiner = new Examiner(part, sheet, Optional.empty(), () -> {});
    Beginning begun = examiner.begin();
    WheelSearch wheel = examiner.identifier().identify(begun.edges);
    Optional<DecodedCrank> decoded = wheel.found().flatMap(w -> decode(begun.edges, w));
    Channel crank = begun.crank.channel();
    IgnitionChannels channels =
        IgnitionChannels.find(part, sheet, crank, begun.looks, decoded.map(DecodedCrank::angle));
    return new Glance(part, roles(begun.crank, channels), begun.edges, decoded, wheel.reason());
  }

  /** The channels gone through. */
  private record Beginning(
      CrankChannel crank, FirstLooks looks, ChannelSurvey survey, CrankEdges edges) {}

  private Beginning begin() throws JobSheetException {
    CrankChannel crank = CrankChannel.find(capture, sheet);
    FirstLooks looks = FirstLooks.start(capture, sheet, crank.channel());
    ChannelSurvey survey = ChannelSurvey.of(crank.channel().signal());
    return new Beginning(crank, looks, survey, edges(crank.channel(), survey));
  }

  private Examination run() throws JobSheetException {
    Beginning begun = begin();
    CrankChannel crank = begun.crank;
    FirstLooks looks = begun.looks;
    ChannelSurvey survey = begun.survey;
    CrankEdges edges = begun.edges;
    betweenStages.run();
    CompletableFuture<Disturbances> disturbances =
        CompletableFuture.supplyAsync(() -> DisturbanceScan.of(crank.channel().signal(), edges));
    WheelSearch wheel = identifier().identify(edges);
    betweenStages.run();
    EdgeDirection timed = timedEdge(edges, wheel.found());
    CompletableFuture<ReceiverTrace> received =
        CompletableFuture.supplyAsync(
            () -> receive(crank.channel(), edges.kind(), timed, wheel.found(), survey));
    Optional<DecodedCrank> decoded = wheel.found().flatMap(w -> decode(edges, w));
    betweenStages.run();
    ReceiverTrace heard = received.join();
    betweenStages.run();
    Ignition ignition = ignition(crank.channel(), edges.kind(), looks, decoded);
    if (isOffBySlots(decoded, ignition)) {
      Optional<DecodedCrank> other = wheel.found().flatMap(w -> decodeOtherwise(edges, w));
      if (other.isPresent()) {
        Ignition otherwise = ignition(crank.channel(), edges.kind(), looks, other);
        boolean fits = !isOffBySlots(other, otherwise);
        decoded = fits ? other : decoded;
        ignition = fits ? otherwise : ignition;
      }
    }
    betweenStages.run();
    ReceiverTrace receiver = decoded.map(d -> heard.withSpeeds(d.angle()::rpmNear)).orElse(heard);
    Observations seen =
        new Observations(
            capture,
            crank.channel().unit(),
            stated(timed),
            edges,
            disturbances.join(),
            decoded,
            wheel.reason(),
            receiver,
            ignition.coils,
            ignition.timing);
    return new Examination(
        sheet,
        roles(crank, ignition.channels),
        seen,
        Diagnostician.diagnose(seen),
        decoded.map(d -> teeth(d, receiver, timed)));
  }

  private CrankEdges edges(Channel crank, ChannelSurvey survey) {
    EdgeDetector usual = EdgeDetector.withDefaults();
    EdgeDetector detector = sheet.sensor().kind().map(usual::withKind).orElse(usual);
    return detector.detect(crank.signal(), survey);
  }

  private WheelIdentifier identifier() {
    WheelIdentifier i = WheelIdentifier.withDefaults();
    i = sheet.wheel().pattern().map(i::withStated).orElse(i);
    return sheet.sensor().edge().map(i::withTimedEdge).orElse(i);
  }

  private static Optional<DecodedCrank> decode(CrankEdges edges, WheelIdentification wheel) {
    return RotationMeasurement.measure(
        wheel, WheelDecoder.withDefaults().decode(edges.train(wheel.toothEdge()), wheel.pattern()));
  }

  private static Optional<DecodedCrank> decodeOtherwise(
      CrankEdges edges, WheelIdentification wheel) {
    return WheelDecoder.withDefaults()
        .decodeOtherwise(edges.train(wheel.toothEdge()), wheel.pattern())
        .flatMap(w -> RotationMeasurement.measure(wheel, w));
  }

  /** Whether tooth 1 is a slot or more from where the controller is told. */
  private static boolean isOffBySlots(Optional<DecodedCrank> decoded, Ignition ignition) {
    OptionalDouble off = ignition.timing.wheelOffDegrees();
    return decoded.isPresent()
        && off.isPresent()
        && Math.abs(off.getAsDouble()) > SLOT_OFF * decoded.get().wheel().pattern().pitchDegrees();
  }

  /** The edge that a controller times: as stated, else falling, else a switch's steadier one. */
  private EdgeDirection timedEdge(CrankEdges edges, Optional<WheelIdentification> wheel) {
    EdgeDirection usual =
        edges.kind() == SensorKind.HALL
            ? wheel.map(WheelIdentification::toothEdge).orElse(EdgeDirection.FALLING)
            : EdgeDirection.FALLING;
    return sheet.sensor().edge().orElse(usual);
  }

  /**
   * The receiver follows the wheel that the controller is told, else the one found; of several
   * gaps, whose groups a name does not give, as they were found.
   */
  private ReceiverTrace receive(
      Channel crank,
      SensorKind kind,
      EdgeDirection timed,
      Optional<WheelIdentification> found,
      ChannelSurvey survey) {
    ReceiverEdges heard =
        ReferenceReceiver.withDefaults().withEdge(timed).listen(crank.signal(), kind, survey);
    Optional<WheelPattern> seen = found.map(WheelIdentification::pattern);
    Optional<WheelPattern> told = sheet.wheel().pattern();
    return told.flatMap(t -> seen.filter(t::isNamedLike))
        .or(() -> told)
        .or(() -> seen)
        .map(w -> ReferenceReceiver.follow(heard, followed(w)))
        .orElseGet(() -> new ReceiverTrace(heard.times(), List.of()));
  }

  static FollowedWheel followed(WheelPattern wheel) {
    if (!wheel.hasReference()) {
      return FollowedWheel.plain(wheel.slots());
    }
    if (wheel.teeth() > wheel.slots()) {
      return FollowedWheel.withExtraTooth(wheel.slots());
    }
    return FollowedWheel.withGaps(wheel.runLengths(), wheel.gapLengths());
  }

  private Ignition ignition(
      Channel crank, SensorKind kind, FirstLooks looks, Optional<DecodedCrank> decoded)
      throws JobSheetException {
    Optional<AngleTimeline> angle = decoded.map(DecodedCrank::angle);
    IgnitionChannels channels = IgnitionChannels.find(capture, sheet, crank, looks, angle);
    FiringOrder order =
        FiringOrders.of(
            sheet.engine(), channels.coils().stream().map(JobSheet.CoilEntry::coil).toList());
    if (decoded.isEmpty()) {
      return new Ignition(channels, List.of(), NO_TIMING);
    }
    List<CoilTrack> coils = CoilReader.read(coilChannels(channels, looks), angle.get(), order);
    List<TdcMark> marks =
        channels.tdc().map(t -> TdcMarks.read(looks.at(t).edges(), angle.get())).orElse(List.of());
    Timing timing =
        TimingMeasurement.measure(
            new TimingInputs(
                angle.get(),
                setting(decoded.get(), kind),
                marks,
                sheet.tdc(),
                coils,
                order,
                commanded(angle.get())));
    return new Ignition(channels, coils, timing);
  }

  private Optional<CommandedAdvance> commanded(AngleTimeline angle) throws JobSheetException {
    JobSheet.Commanded stated = sheet.commanded();
    if (stated.table().isPresent()) {
      return Optional.of(commanded(stated.table().get(), stated.load(), angle));
    }
    if (log.isPresent() && log.get().size() == 0) {
      throw new JobSheetException(
          "the controller's log has names of columns but no row of values; export it again");
    }
    if (log.isPresent() && !log.get().hasAdvance()) {
      throw new JobSheetException(
          "the controller's log has no column Advance; log it, or give the ignition table, which"
              + " the logged loads are then looked up in");
    }
    return log.map(l -> LogMatcher.match(l, angle))
        .or(
            () ->
                stated.advanceDegrees().stream()
                    .<CommandedAdvance>mapToObj(FixedAdvance::new)
                    .findFirst());
  }

  private CommandedAdvance commanded(IgnitionTable table, OptionalDouble load, AngleTimeline angle)
      throws JobSheetException {
    if (load.isPresent()) {
      return TableAdvance.at(table, load.getAsDouble());
    }
    if (log.filter(ControllerLog::hasLoad).isEmpty()) {
      throw new JobSheetException(
          table.file().getFileName()
              + ": the load at which to read the ignition table is not known; give a controller's"
              + " log with a column Load, or state one load (commanded.load in the job sheet,"
              + " --load)");
    }
    return TableAdvance.at(table, log.get(), angle);
  }

  private List<CoilChannel> coilChannels(IgnitionChannels channels, FirstLooks looks) {
    return channels.coils().stream().map(c -> coilChannel(c, looks)).toList();
  }

  private CoilChannel coilChannel(JobSheet.CoilEntry entry, FirstLooks looks) {
    Channel channel = capture.channel(entry.channel()).orElseThrow();
    return new CoilChannel(entry.coil(), channel.signal(), () -> looks.at(channel).edges());
  }

  private WheelSetting setting(DecodedCrank crank, SensorKind kind) {
    return new WheelSetting(
        sheet.wheel().tooth1BtdcDegrees(),
        sheet.wheel().sensorCircleMillimetres(),
        crank.wheel().pattern(),
        crank.wheel().geometry(),
        kind);
  }

  private Observations.Stated stated(EdgeDirection timed) {
    return new Observations.Stated(
        sheet.engine().cylinders().orElse(0),
        sheet.wheel().pattern(),
        sheet.wheel().sensorCircleMillimetres(),
        timed,
        sheet.sensor().edge().isPresent()
            ? Observations.Statement.STATED
            : Observations.Statement.ASSUMED,
        new Observations.Firing(
            sheet.engine().firingAngles().isEmpty() ? sheet.engine().firingOrder() : List.of(),
            sheet.engine().firingOrder().isEmpty()
                ? Observations.Statement.ASSUMED
                : Observations.Statement.STATED,
            sheet.wheel().tooth1BtdcDegrees()));
  }

  /** Where the receiver times the slots, all its edges are off the teeth and none is a stray. */
  private static ToothEvents teeth(
      DecodedCrank crank, ReceiverTrace receiver, EdgeDirection timed) {
    return crank.identification().toothEdge() == timed
        ? ReceiverStrays.merge(crank, receiver)
        : crank.wheel().events();
  }

  private static Examination.Roles roles(CrankChannel crank, IgnitionChannels ignition) {
    Map<String, String> coils = new LinkedHashMap<>();
    ignition.coils().forEach(c -> coils.put(c.coil().name(), c.channel()));
    return new Examination.Roles(
        crank.channel().name(),
        ignition.tdc().map(Channel::name),
        coils,
        (crank.assumption() + " " + ignition.assumption()).strip());
  }

  /** What the ignition stages found. */
  private record Ignition(IgnitionChannels channels, List<CoilTrack> coils, Timing timing) {}
}
