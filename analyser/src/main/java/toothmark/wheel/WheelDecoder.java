package toothmark.wheel;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import toothmark.edges.EdgeTrain;
import toothmark.wheel.Standstills.Part;

/**
 * Names every edge of a train, given the wheel: which tooth it is, or that it is a stray; and puts
 * every tooth that gave no edge in its place.
 *
 * <p>It is not a follower: the reading is the most probable one of the whole record, see {@code
 * docs/methods/decoding.md}.
 */
public final class WheelDecoder {

  /** Edges from which noise and rates are learned. */
  private static final int STUDIED = 1500;

  /** Of less than a turn the place of the gap shows with so many teeth on each side of it. */
  private static final int BESIDE_A_TURN = 3;

  private static final double SLOPE_MEMORY_DEGREES = 60;

  /** A search with better rates that ends dearer, by so many nats, missed the best reading. */
  private static final double LOST_ITS_WAY = 20;

  private WheelDecoder() {}

  /**
   * A decoder with the customary settings.
   *
   * @return the decoder
   */
  public static WheelDecoder withDefaults() {
    return new WheelDecoder();
  }

  /**
   * Decodes a train.
   *
   * @param train edges that are teeth, with whatever strays among them
   * @param pattern the wheel
   * @return every edge named
   */
  public DecodedWheel decode(EdgeTrain train, WheelPattern pattern) {
    Grounds grounds = Grounds.of(train, pattern);
    return grounds.assemble(grounds.label(grounds.faults()));
  }

  /**
   * Decodes a train in the other of two ways that are equally likely: a broken tooth on a wheel
   * with one tooth missing looks like the gap, and only the angle of tooth 1 tells which is which.
   *
   * @param train edges that are teeth, with whatever strays among them
   * @param pattern the wheel
   * @return every edge named as if the broken tooth were the gap; empty when there is no such
   *     choice
   */
  public Optional<DecodedWheel> decodeOtherwise(EdgeTrain train, WheelPattern pattern) {
    Grounds grounds = Grounds.of(train, pattern);
    ToothFaults faults = grounds.faults();
    if (!PhaseCheck.mayExchange(pattern, faults)) {
      return Optional.empty();
    }
    Labelling labels = grounds.label(faults);
    return Optional.of(
        grounds.assemble(
            PhaseCheck.withGapAt(grounds.series, labels, pattern, faults.firstDead())));
  }

  /** What was learned of a train before it is decoded whole. */
  private record Grounds(
      EdgeSeries series,
      WheelPattern pattern,
      List<Part> parts,
      SpeedFilter filter,
      NoiseStudy study,
      NoiseModel noise,
      List<Labelling> readings) {

    static Grounds of(EdgeTrain train, WheelPattern pattern) {
      EdgeSeries series = EdgeSeries.of(train);
      WheelTemplate wheel = WheelTemplate.of(pattern);
      double memory = Math.max(2, Math.min(10, SLOPE_MEMORY_DEGREES / pattern.pitchDegrees()));
      SpeedFilter filter = new SpeedFilter(memory);
      List<Part> parts = Standstills.parts(series, pattern);
      Part longest = Collections.max(parts, Comparator.comparingInt(Part::size));
      int from = longest.from();
      int studied = Math.min(longest.to(), from + STUDIED);
      NoiseModel guess = NoiseEstimate.of(series, from, longest.to());
      NoiseStudy study = new NoiseStudy(series, wheel, filter, from, studied).run(guess);
      TurnRhythm.of(series, from, studied)
          .filter(r -> r.suits(pattern))
          .ifPresent(r -> study.tried(guess, r.label(pattern)));
      NoiseModel learned = NoiseStudy.withRates(study.noise(), study.labels());
      Part read = new Part(from, studied);
      List<Labelling> first = WheelDecoder.readings(series, pattern, learned, filter, read);
      boolean lost = first.get(0).cost > study.labels().cost + LOST_ITS_WAY;
      NoiseModel noise = lost ? study.noise() : learned;
      List<Labelling> readings =
          lost ? WheelDecoder.readings(series, pattern, noise, filter, read) : first;
      return new Grounds(series, pattern, parts, filter, study, noise, readings);
    }

    /** Of the teeth, if that makes the edges more probable. */
    ToothFaults faults() {
      ToothFaults faults = likeliest(study, series, readings, pattern);
      return faults.any() && study.supports(pattern, faults)
          ? faults
          : ToothFaults.none(pattern.teeth());
    }

    Labelling label(ToothFaults faults) {
      Labelling all = new Labelling(0, series.size());
      for (Part p : parts) {
        Labelling labels = label(faults, p);
        if (parts.size() == 1 || p.size() >= pattern.teeth() || labels.turns(BESIDE_A_TURN)) {
          all.take(labels);
        }
      }
      return all;
    }

    private Labelling label(ToothFaults faults, Part part) {
      WheelTemplate as = WheelTemplate.of(pattern, faults);
      Supplier<Labeller> search =
          () -> new Labeller(series, as, noise, filter, Labeller.Effort.SWIFT);
      return faults.countsOtherwise()
          ? search.get().label(part.from(), part.to()).renumbered(as, pattern.teeth())
          : PhaseCheck.label(series, pattern, search, part.from(), part.to());
    }

    DecodedWheel assemble(Labelling labels) {
      LossBorders.clear(series, labels, pattern);
      TurnCount seen = TurnCount.of(series, labels, pattern);
      return new EventAssembly(series, pattern, parts, labels, seen).assemble();
    }
  }

  private static List<Labelling> readings(
      EdgeSeries series, WheelPattern pattern, NoiseModel noise, SpeedFilter filter, Part part) {
    WheelTemplate wheel = WheelTemplate.of(pattern);
    return PhaseCheck.readings(
        series,
        pattern,
        () -> new Labeller(series, wheel, noise, filter, Labeller.Effort.BRISK),
        part.from(),
        part.to());
  }

  private record Priced(ToothFaults faults, double nats) {}

  /**
   * The faults that make the edges most probable. They depend on where the gap was taken to be; and
   * a dead tooth may be the gap, and what was taken for the gap a tooth far out of place.
   */
  private static ToothFaults likeliest(
      NoiseStudy study, EdgeSeries series, List<Labelling> readings, WheelPattern pattern) {
    List<Priced> all = new ArrayList<>();
    for (Labelling reading : readings) {
      ToothFaults faults = OutlyingTeeth.find(series, reading, pattern);
      boolean offPhase = readings.size() > 1 && reading == readings.get(0);
      double turns = (double) reading.count() / pattern.teeth();
      double against = offPhase ? PhaseCheck.NATS_A_TURN * turns : 0;
      all.add(new Priced(faults, study.cost(pattern, faults) + against));
      int[] small = faults.smallerThan(OutlyingTeeth.BESIDE_GAP * pattern.pitchDegrees());
      if (small.length > 0) {
        ToothFaults far = faults.inPlace(small);
        all.add(new Priced(far, study.cost(pattern, far) + against));
      }
      if (PhaseCheck.mayExchange(pattern, faults)) {
        Labelling other = PhaseCheck.withGapAt(series, reading, pattern, faults.firstDead());
        ToothFaults otherwise = OutlyingTeeth.find(series, other, pattern);
        all.add(new Priced(otherwise, study.cost(pattern, otherwise)));
      }
    }
    return Collections.min(all, Comparator.comparingDouble(Priced::nats)).faults();
  }
}
