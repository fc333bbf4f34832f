package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/** Ranks the wheels that the edges of one train may show. */
final class TrainSearch {

  /** Edges of a stretch: two turns of the finest wheel, many of a usual one. */
  private static final int STRETCH = 400;

  private static final int STRETCHES = 3;

  /** A shorter record is parted too where its speed grows as much: it holds first fire. */
  private static final double FIRST_FIRE = 3;

  private static final int FEWEST_PARTED = 120;

  /** A part between two silences that is shorter, or than that share of the longest, is no part. */
  private static final int FEWEST_OF_A_PART = 8;

  private static final double LEAST_SHARE = 0.3;

  /** Places at which a stretch may begin. */
  private static final int PLACES = 24;

  private static final int GUESSES = 5;

  /**
   * From this roughness on, counting slots is not to be trusted and all coarse wheels are tried.
   */
  private static final double ROUGH = 0.06;

  private static final int COARSE_SLOTS = 16;
  private static final double SLOT_MEMORY = 5;
  private static final double SLOT_LOSS_NATS = 2.0;

  /** The candidates' costs are sums of nats that are not quite independent. */
  private static final double TEMPER = 0.7;

  private static final double STATED_BONUS = 6;

  /** A speed that changes by as much within a short record is no steady one. */
  private static final double GROWS = 1.5;

  /** How much rougher the speed may be than calm parts of a record show. */
  private static final double ROUGHER = 4;

  private static final int RACED_AGAIN = 8;

  /** A wheel in the race. */
  record Runner(WheelPattern pattern, double cost) {}

  private final EdgeSeries edges;
  private final Optional<WheelPattern> stated;
  private final List<WheelRace.Stretch> stretches = new ArrayList<>();
  private final List<TurnRhythm> rhythms = new ArrayList<>();
  private final Set<WheelPattern> candidates = new LinkedHashSet<>();
  private List<Runner> ranking = List.of();
  private int raced;

  /** The wheel whose labels were asked for last, and they. */
  private Optional<WheelPattern> labelled = Optional.empty();

  private List<Labelling> labels = List.of();

  TrainSearch(EdgeSeries edges, Optional<WheelPattern> stated) {
    this.edges = edges;
    this.stated = stated;
  }

  /** Best first; empty when there is nothing to rank. */
  List<Runner> ranking() {
    return ranking;
  }

  /** Edges on which the ranking rests. */
  int raced() {
    return raced;
  }

  /** Ranks, unless that turns out to be needless meanwhile. */
  TrainSearch run(BooleanSupplier needless) {
    boolean rough = false;
    for (int[] s : calmest()) {
      rough |= study(s[0], s[1]);
    }
    stated.ifPresent(candidates::add);
    List<Runner> byRhythm = byRhythm();
    if (!byRhythm.isEmpty()) {
      rank(byRhythm);
      return this;
    }
    rhythms.clear();
    if (rough) {
      addCoarse();
    }
    addFilled();
    addNeighbours();
    keepThoseOfTheTurn();
    List<WheelPattern> likelyFirst = new ArrayList<>(candidates);
    likelyFirst.sort(Comparator.comparingDouble(PatternPrior::nats));
    List<Runner> list = race(likelyFirst, stretches, needless);
    if (!needless.getAsBoolean()) {
      rank(list);
      if (!list.isEmpty() && !labels(list.get(0).pattern()).stream().allMatch(Labelling::isPlain)) {
        raceOnlySeen();
        raceRougher();
      }
    }
    return this;
  }

  private List<Runner> race(
      List<WheelPattern> wheels, List<WheelRace.Stretch> over, BooleanSupplier needless) {
    WheelRace race = new WheelRace(edges, over, stated);
    List<Runner> list = new ArrayList<>();
    for (WheelPattern p : wheels) {
      double cost = needless.getAsBoolean() ? Double.POSITIVE_INFINITY : race.cost(p);
      if (cost < Double.POSITIVE_INFINITY) {
        list.add(runner(p, cost));
        fillings(p).forEach(w -> list.add(runner(w, cost + ToothFaults.priceOfDead(w))));
      }
    }
    return list;
  }

  /** Teeth of the best that never gave an edge may be gaps. */
  private void raceOnlySeen() {
    WheelPattern best = ranking.get(0).pattern();
    List<WheelPattern> other = SeenTeeth.wheel(best, labels(best)).stream().toList();
    if (candidates.addAll(other)) {
      List<Runner> list = race(other, stretches, () -> false);
      list.addAll(ranking);
      rank(list);
    }
  }

  /**
   * A speed that grows may do so more suddenly than calm parts of a record show: at the first fire
   * after idling. So the likelier wheels are compared with a rougher speed too, the same for all,
   * and that noise stands which makes the edges more probable.
   */
  private void raceRougher() {
    WheelRace.Stretch s = stretches.get(0);
    if (stretches.size() > 1 || change(s.from(), s.to()) < GROWS) {
      return;
    }
    NoiseModel rough = s.noise().withMotion(s.noise().jitter(), ROUGHER * s.noise().roughness());
    List<WheelRace.Stretch> again = List.of(new WheelRace.Stretch(s.from(), s.to(), rough));
    List<WheelPattern> first = ranking.stream().map(Runner::pattern).limit(RACED_AGAIN).toList();
    List<Runner> list = race(first, again, () -> false);
    double best = list.stream().mapToDouble(Runner::cost).min().orElse(Double.POSITIVE_INFINITY);
    if (best < ranking.get(0).cost()) {
      stretches.set(0, again.get(0));
      labelled = Optional.empty();
      list.addAll(ranking);
      rank(list);
    }
  }

  /** A wheel with what it costs to explain the edges by it, what is usual and what is stated. */
  private Runner runner(WheelPattern p, double cost) {
    boolean told = stated.filter(p::isNamedLike).isPresent();
    return new Runner(p, cost + (told ? -STATED_BONUS : PatternPrior.nats(p)));
  }

  private void rank(List<Runner> list) {
    list.sort(Comparator.comparingDouble(Runner::cost));
    Set<WheelPattern> ranked = new HashSet<>();
    ranking = list.stream().filter(r -> ranked.add(r.pattern())).toList();
    raced = stretches.stream().mapToInt(s -> s.to() - s.from()).sum();
  }

  /** Ranks the wheels by what all turns have in common; empty when that cannot be. */
  private List<Runner> byRhythm() {
    for (WheelRace.Stretch s : stretches) {
      TurnRhythm.of(edges, s.from(), s.to()).ifPresent(rhythms::add);
    }
    if (rhythms.isEmpty() || rhythms.stream().mapToInt(TurnRhythm::teeth).distinct().count() > 1) {
      return List.of();
    }
    Set<WheelPattern> all = new LinkedHashSet<>(candidates);
    rhythms.forEach(r -> all.addAll(r.candidates()));
    double any = rhythms.stream().mapToDouble(r -> r.pace().natsOfAny()).sum();
    List<Runner> list = new ArrayList<>();
    for (WheelPattern p : all) {
      boolean other = !p.hasReference() && p.teeth() != rhythms.get(0).teeth();
      if (rhythms.get(0).suits(p) && (!other || stated.filter(p::equals).isPresent())) {
        double nats = rhythms.stream().mapToDouble(r -> r.nats(p)).sum();
        if (nats > any) {
          list.add(runner(p, -nats));
          double again = PatternPrior.sameAgain(p);
          fillings(p).forEach(w -> list.add(runner(w, ToothFaults.priceOfDead(w) + again - nats)));
        }
      }
    }
    return list;
  }

  /** The labels of the stretches by a wheel of the ranking. */
  List<Labelling> labels(WheelPattern pattern) {
    if (!rhythms.isEmpty() && rhythms.get(0).suits(pattern)) {
      return rhythms.stream().map(r -> r.label(pattern)).toList();
    }
    if (labelled.filter(pattern::equals).isEmpty()) {
      labels = new WheelRace(edges, stretches, stated).labels(pattern);
      labelled = Optional.of(pattern);
    }
    return labels;
  }

  /** Confidence of each in the ranking. */
  double[] confidences() {
    double[] p = new double[ranking.size()];
    double sum = 0;
    for (int i = 0; i < p.length; i++) {
      p[i] = Math.exp(-TEMPER * (ranking.get(i).cost() - ranking.get(0).cost()));
      sum += p[i];
    }
    for (int i = 0; i < p.length; i++) {
      p[i] /= sum;
    }
    return p;
  }

  /** Guesses wheels from one stretch. */
  private boolean study(int from, int to) {
    NoiseModel noise = NoiseEstimate.of(edges, from, to);
    WheelTemplate steps = WheelTemplate.evenSteps();
    SpeedFilter filter = new SpeedFilter(SLOT_MEMORY);
    NoiseModel loose = noise.withRates(noise.strayNats(), SLOT_LOSS_NATS).withLossGrowth(1);
    NoiseStudy study = new NoiseStudy(edges, steps, filter, from, to).run(loose);
    for (FoldedOccupancy.Guess g :
        FoldedOccupancy.guesses(SlotCount.of(edges, study.labels()), GUESSES)) {
      candidates.add(g.pattern());
    }
    NoiseModel found = study.noise();
    double slowest = Arrays.stream(edges.slowest, from, to).max().orElseThrow();
    boolean rough = Math.max(found.roughnessAt(slowest), found.jitter()) > ROUGH;
    double stray = NoiseStudy.withRates(found, study.labels()).strayNats();
    NoiseModel fair = noise.withMotion(found.jitter(), found.roughness());
    stretches.add(new WheelRace.Stretch(from, to, fair.withRates(stray, noise.lossNats())));
    return rough;
  }

  private void addCoarse() {
    for (int n = 4; n <= COARSE_SLOTS; n++) {
      for (int m = 1; m <= 2 && n - m >= 3; m++) {
        candidates.add(WheelPattern.of(n, m));
      }
      candidates.add(WheelPattern.withExtraTooth(n));
    }
  }

  /** A gap of one slot may be a tooth out of place: the wheels with such gaps filled. */
  private void addFilled() {
    for (WheelPattern p : List.copyOf(candidates)) {
      candidates.addAll(fillings(p));
    }
  }

  /** The wheels that look like this one when one of their teeth gives no edge. */
  private static Set<WheelPattern> fillings(WheelPattern p) {
    Set<WheelPattern> all = new LinkedHashSet<>();
    int[] gaps = p.gapLengths();
    int[] runs = p.runLengths();
    for (int k = 0; k < gaps.length && gaps.length > 1; k++) {
      if (gaps[k] == 1) {
        all.add(filled(p.slots(), runs, gaps, k));
      }
    }
    return all;
  }

  private static WheelPattern filled(int slots, int[] runs, int[] gaps, int k) {
    int n = gaps.length - 1;
    int[] r = new int[n];
    int[] g = new int[n];
    for (int i = 0; i < n; i++) {
      int from = (k + 1 + i) % gaps.length;
      r[i] = runs[from];
      g[i] = gaps[from];
    }
    r[0] += 1 + runs[k];
    return WheelPattern.ofRuns(slots, r, g);
  }

  /** The same wheels with more or fewer teeth missing, and those that pass for several turns. */
  private void addNeighbours() {
    for (WheelPattern p : List.copyOf(candidates)) {
      int gaps = p.gapLengths().length;
      if (gaps == 1) {
        addGaps(p.slots());
        addGaps(p.slots() - p.gapLengths()[0]);
      } else if (gaps > 1 && p.slots() % gaps == 0) {
        addGaps(p.slots() / gaps);
      }
    }
    candidates.stream().findFirst().ifPresent(p -> candidates.add(WheelPattern.plain(p.slots())));
  }

  private void addGaps(int slots) {
    for (int m = 1; m <= 3 && slots - m >= 3; m++) {
      candidates.add(WheelPattern.of(slots, m));
    }
  }

  /**
   * Where every turn has the same edges, leaves out the wheels that would have a stray, or a tooth
   * lost, in each: they cost too much to win, and most of the race.
   */
  private void keepThoseOfTheTurn() {
    Set<Integer> turns = new HashSet<>();
    for (WheelRace.Stretch s : stretches) {
      turns.add(TurnRhythm.atAnySpeed(edges, s.from(), s.to()).map(TurnRhythm::teeth).orElse(0));
    }
    int teeth = turns.iterator().next();
    if (turns.size() == 1 && teeth > 0) {
      candidates.removeIf(p -> !mayTurnBy(p, teeth) && stated.filter(p::equals).isEmpty());
    }
  }

  private static boolean mayTurnBy(WheelPattern p, int teeth) {
    boolean twice = p.teeth() % teeth == 0 && PatternPrior.sameAgain(p) > 0;
    return !p.hasReference() || twice || ToothFaults.mayGive(p, teeth);
  }

  /** The calmest stretches, in time order, not overlapping. */
  private List<int[]> calmest() {
    List<Standstills.Part> parts = turning();
    int n = parts.stream().mapToInt(Standstills.Part::size).sum();
    boolean start =
        n > FEWEST_PARTED && parts.stream().anyMatch(p -> change(p.from(), p.to()) > FIRST_FIRE);
    if (n <= STRETCH * STRETCHES / 2 && !start) {
      return parts.stream().map(p -> new int[] {p.from(), p.to()}).toList();
    }
    int length = Math.min(STRETCH, n / STRETCHES);
    record Calm(int[] stretch, double unrest) {}
    List<Calm> all = new ArrayList<>();
    for (Standstills.Part p : parts) {
      int most = Math.min(length, p.size());
      int places = most < length ? 1 : Math.max(2, (int) ((long) PLACES * p.size() / n));
      for (int k = 0; k < places; k++) {
        int from = p.from() + (int) ((long) k * (p.size() - most) / Math.max(1, places - 1));
        int to = from + most;
        all.add(new Calm(new int[] {from, to}, roughness(from, to) * change(from, to)));
      }
    }
    all.sort((a, b) -> Double.compare(a.unrest, b.unrest));
    List<int[]> best = new ArrayList<>();
    for (Calm calm : all) {
      int[] s = calm.stretch;
      if (best.size() < STRETCHES && best.stream().allMatch(b -> apart(b, s))) {
        best.add(s);
      }
    }
    best.sort((a, b) -> Integer.compare(a[0], b[0]));
    return best;
  }

  /** The longest parts of the record without a long silence, in time order. */
  private List<Standstills.Part> turning() {
    List<Standstills.Part> all = new ArrayList<>(Standstills.bySilence(edges));
    all.sort(Comparator.comparingInt(Standstills.Part::size).reversed());
    int least = Math.max(FEWEST_OF_A_PART, (int) (LEAST_SHARE * all.get(0).size()));
    return all.stream()
        .limit(STRETCHES)
        .filter(p -> p == all.get(0) || p.size() >= least)
        .sorted(Comparator.comparingInt(Standstills.Part::from))
        .toList();
  }

  private static boolean apart(int[] a, int[] b) {
    return a[1] <= b[0] || b[1] <= a[0];
  }

  /** Slowest speed to fastest: through first fire it grows severalfold within a turn. */
  private double change(int from, int to) {
    double longest = Arrays.stream(edges.intervals, from, to).max().orElseThrow();
    return longest / Arrays.stream(edges.intervals, from, to).min().orElseThrow();
  }

  private double roughness(int from, int to) {
    double[] x = new double[to - from - 2];
    for (int i = from + 1; i < to - 1; i++) {
      double[] t = edges.times;
      x[i - from - 1] = Math.abs(t[i + 1] - 2 * t[i] + t[i - 1]) / edges.intervals[i];
    }
    Arrays.sort(x);
    return x[(int) (0.6 * x.length)];
  }
}
