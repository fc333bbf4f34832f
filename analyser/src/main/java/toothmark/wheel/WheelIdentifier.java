package toothmark.wheel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDirection;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.units.WordBook;

/**
 * Names the wheel from its edges alone, and which edges are its teeth.
 *
 * <p>A wheel that the job sheet states is one candidate among the others; it wins where the edges
 * cannot decide. The method is in {@code docs/methods/wheel-identification.md}.
 */
public final class WheelIdentifier {

  private static final WordBook BOOK = new WordBook("toothmark.wheel.wheel");

  private static final int FEWEST_EDGES = 7;

  /** Cost of an edge in a train without any order is about 1.4 nats. */
  private static final double NO_ORDER_NATS = 0.8;

  /** A wheel names at least this share of the edges as strong as its teeth. */
  private static final double FEWEST_NAMED = 0.35;

  private static final double SWING_CLEAR = 0.2;

  /**
   * With so much the other edges' gaps, if they have any, swing clearly less: 0.12 at most seen.
   */
  private static final double SWING_ALONE = 0.3;

  /** Slots are wider than teeth, so their crossings are flatter and less certain. */
  private static final double SHARPER = 3;

  /** The crossing in the gap is one a turn. */
  private static final double BLUNT_A_TURN = 0.5;

  private static final double SELDOM = 0.2;
  private static final double SWING_LIKELY = 0.1;
  private static final double STEADIER = 0.5;
  private static final int ALTERNATIVES = 5;

  /** Less probable wheels are no alternatives. */
  private static final double IMPOSSIBLE = 1e-6;

  private final Optional<WheelPattern> stated;
  private final Optional<EdgeDirection> timedEdge;

  private WheelIdentifier(Optional<WheelPattern> stated, Optional<EdgeDirection> timedEdge) {
    this.stated = stated;
    this.timedEdge = timedEdge;
  }

  /**
   * An identifier that is told nothing.
   *
   * @return the identifier
   */
  public static WheelIdentifier withDefaults() {
    return new WheelIdentifier(Optional.empty(), Optional.empty());
  }

  /**
   * Tells the wheel that the job sheet states.
   *
   * @param pattern the wheel
   * @return a new identifier
   */
  public WheelIdentifier withStated(WheelPattern pattern) {
    return new WheelIdentifier(Optional.of(pattern), timedEdge);
  }

  /**
   * Tells the edge that the controller times.
   *
   * @param direction which way the signal goes
   * @return a new identifier
   */
  public WheelIdentifier withTimedEdge(EdgeDirection direction) {
    return new WheelIdentifier(stated, Optional.of(direction));
  }

  /**
   * Names the wheel.
   *
   * @param edges both directions of the crank signal
   * @return the wheel, or why there is none
   */
  public WheelSearch identify(CrankEdges edges) {
    int most = Math.max(edges.falling().size(), edges.rising().size());
    if (most < FEWEST_EDGES) {
      return WheelSearch.none(BOOK.count(most, "few-edges", FEWEST_EDGES));
    }
    if (edges.kind() == SensorKind.VARIABLE_RELUCTANCE) {
      return ofWave(edges);
    }
    List<String> evidence = new ArrayList<>();
    EdgeDirection direction = chosenEdge(edges, evidence);
    Side side = new Side(edges, direction, () -> false);
    return side.isWheel()
        ? WheelSearch.of(side.identification(Orientation.UNKNOWN, evidence))
        : WheelSearch.none(side.whyNot());
  }

  /** Of a switch: the edge the job sheet names, else falling unless rising is much steadier. */
  private EdgeDirection chosenEdge(CrankEdges edges, List<String> evidence) {
    if (edges.kind() == SensorKind.EDGES_ONLY) {
      return EdgeDirection.FALLING;
    }
    if (timedEdge.isPresent()) {
      evidence.add(BOOK.of("stated." + timedEdge.get()));
      return timedEdge.get();
    }
    double falling = Unsteadiness.of(edges.falling());
    double rising = Unsteadiness.of(edges.rising());
    if (rising < STEADIER * falling) {
      evidence.add(
          BOOK.of(
              "steadier",
              String.format(Locale.ROOT, "%.2g", rising),
              String.format(Locale.ROOT, "%.2g", falling)));
      return EdgeDirection.RISING;
    }
    return EdgeDirection.FALLING;
  }

  /** Of a wave: the steep crossings are teeth, and which way they go shows how it is wired. */
  private WheelSearch ofWave(CrankEdges edges) {
    EdgeDirection timed = timedEdge.orElse(EdgeDirection.FALLING);
    AtomicBoolean needless = new AtomicBoolean();
    CompletableFuture<Side> meanwhile =
        CompletableFuture.supplyAsync(() -> new Side(edges, timed.opposite(), needless::get));
    Side as = new Side(edges, timed, () -> false);
    if (as.isWheel() && as.swing().orElse(0) > SWING_ALONE) {
      needless.set(true);
      return WheelSearch.of(as.identification(Orientation.NORMAL, List.of(as.swingEvidence())));
    }
    Side other = meanwhile.join();
    if (!as.isWheel() && !other.isWheel()) {
      return WheelSearch.none(as.whyNot());
    }
    Side best = as.likelierThan(other) ? as : other;
    List<String> evidence = best.swing().isPresent() ? List.of(best.swingEvidence()) : List.of();
    boolean telling = best.swing().isPresent() || other.swing().isPresent();
    Orientation o =
        !telling && !best.top().pattern().hasReference()
            ? Orientation.UNKNOWN
            : best == as ? Orientation.NORMAL : Orientation.REVERSED;
    return WheelSearch.of(best.identification(o, evidence));
  }

  /** One direction's edges taken for teeth. */
  private final class Side {

    private final EdgeDirection direction;
    private final EdgeSeries series;
    private final TrainSearch search;
    private final double costPerEdge;
    private final double named;
    private final OptionalDouble swing;
    private final double sharpness;
    private final double irregularity;

    /** Looks for the wheel until it is found, or needless. */
    Side(CrankEdges edges, EdgeDirection direction, BooleanSupplier needless) {
      this.direction = direction;
      EdgeTrain teeth = edges.train(direction);
      this.series = EdgeSeries.of(teeth);
      this.search = new TrainSearch(series, stated);
      if (teeth.size() >= FEWEST_EDGES) {
        search.run(needless);
      }
      this.costPerEdge =
          search.ranking().isEmpty()
              ? Double.POSITIVE_INFINITY
              : search.ranking().get(0).cost() / search.raced();
      List<Labelling> labels =
          search.ranking().isEmpty() ? List.of() : search.labels(top().pattern());
      this.named = named(labels);
      this.swing =
          labels.isEmpty() || edges.kind() != SensorKind.VARIABLE_RELUCTANCE
              ? OptionalDouble.empty()
              : GapLevel.swing(
                  labels, top().pattern(), teeth, edges.train(direction.opposite()), direction);
      this.sharpness = series.medianDoubt();
      this.irregularity =
          labels.isEmpty()
              ? Double.POSITIVE_INFINITY
              : Irregularity.of(series, labels, top().pattern());
    }

    TrainSearch.Runner top() {
      return search.ranking().get(0);
    }

    boolean isWheel() {
      return costPerEdge < NO_ORDER_NATS && named > FEWEST_NAMED;
    }

    /** Share of the edges that the best wheel takes for teeth; 0 when there is none. */
    private static double named(List<Labelling> labels) {
      double named = labels.stream().mapToInt(Labelling::count).sum();
      return labels.isEmpty() ? 0 : named / labels.stream().mapToInt(Labelling::size).sum();
    }

    OptionalDouble swing() {
      return swing;
    }

    String swingEvidence() {
      return BOOK.of(
          "gap-flux." + direction, String.format(Locale.ROOT, "%.2f", swing.getAsDouble()));
    }

    /**
     * Whether these are rather the teeth: by the flux in the gap, by which crossing creeps through
     * zero there, else by how well a wheel fits.
     */
    boolean likelierThan(Side other) {
      if (!isWheel() || !other.isWheel()) {
        return isWheel();
      }
      double mine = swing.orElse(0);
      double theirs = other.swing.orElse(0);
      if (Math.max(mine, theirs) > SWING_CLEAR && Math.abs(mine - theirs) > SWING_CLEAR) {
        return mine > theirs;
      }
      double myBlunt = blunt(other.sharpness);
      double theirBlunt = other.blunt(sharpness);
      if (Math.max(myBlunt, theirBlunt) > BLUNT_A_TURN
          && Math.min(myBlunt, theirBlunt) < SELDOM * Math.max(myBlunt, theirBlunt)) {
        return myBlunt < theirBlunt;
      }
      if (Math.max(sharpness, other.sharpness) > SHARPER * Math.min(sharpness, other.sharpness)) {
        return sharpness < other.sharpness;
      }
      boolean both = swing.isPresent() && other.swing.isPresent();
      if (both && Math.abs(mine - theirs) > SWING_LIKELY) {
        return mine > theirs;
      }
      return irregularity <= other.irregularity;
    }

    /** How many strong edges a turn are blunt, and less certain than those of the other side. */
    private double blunt(double othersDoubt) {
      return search.ranking().isEmpty()
          ? 0
          : series.bluntShare(othersDoubt) * top().pattern().teeth();
    }

    String whyNot() {
      return BOOK.of("no-wheel." + direction, search.raced());
    }

    WheelIdentification identification(Orientation orientation, List<String> evidence) {
      double[] p = search.confidences();
      List<WheelIdentification.Candidate> others = new ArrayList<>();
      for (int i = 1; i < p.length; i++) {
        WheelPattern w = search.ranking().get(i).pattern();
        boolean possible = p[i] >= IMPOSSIBLE && others.size() < ALTERNATIVES;
        if (possible || stated.filter(w::isNamedLike).isPresent()) {
          others.add(new WheelIdentification.Candidate(w, p[i]));
        }
      }
      return new WheelIdentification(
          top().pattern(), p[0], others, direction, orientation, evidence);
    }
  }
}
