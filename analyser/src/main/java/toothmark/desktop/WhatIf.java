package toothmark.desktop;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import toothmark.chart.TriedInput;
import toothmark.examination.Examination;
import toothmark.examination.InputReplay;
import toothmark.receiver.Conditioner;
import toothmark.receiver.ConditionerReplay;

/** What another input circuit would have made of the crank signal that is open. */
final class WhatIf {

  private static final double WATCHDOG_SECONDS = 0.085;
  private static final double DECAY_SECONDS = 0.1;

  private final Bench bench;
  private final AtomicReference<Prepared> prepared = new AtomicReference<>();
  private long asked;
  private long answered;

  /** The circuit to try. */
  final Watched<Setting> setting = new Watched<>(Setting.usual(Circuit.ADAPTIVE));

  /** What became of the signal; empty where it cannot be told. */
  final Watched<Optional<Outcome>> outcome = new Watched<>(Optional.empty());

  WhatIf(Bench bench) {
    this.bench = bench;
  }

  /**
   * A class of input circuit, its two settings with their usual values, in percent or millivolts.
   */
  enum Circuit {
    /** Armed at a share of the peak of the tooth before. */
    ADAPTIVE(new Span(0, 100, 33), new Span(0, 2000, 30)),
    /** Armed at a share of a stored peak that decays. */
    PEAK_STORE(new Span(0, 100, 80), new Span(0, 2000, 45)),
    /** Two fixed levels. */
    FIXED(new Span(-2000, 2000, 0), new Span(0, 2000, 160));

    private final Span level;
    private final Span guard;

    Circuit(Span level, Span guard) {
      this.level = level;
      this.guard = guard;
    }

    /** The share of the peak in percent, or the middle of the fixed levels in millivolts. */
    Span level() {
      return level;
    }

    /** The least level, or the hysteresis to each side, in millivolts. */
    Span guard() {
      return guard;
    }
  }

  /** From where to where something can be set. */
  record Span(int least, int most, int usual) {}

  /** A circuit with its settings. */
  record Setting(Circuit circuit, int level, int guard) {

    static Setting usual(Circuit circuit) {
      return new Setting(circuit, circuit.level.usual(), circuit.guard.usual());
    }

    private Conditioner conditioner() {
      return switch (circuit) {
        case ADAPTIVE -> Conditioner.adaptive(level / 100.0, guard / 1e3, WATCHDOG_SECONDS);
        case PEAK_STORE -> Conditioner.peakStore(level / 100.0, guard / 1e3, DECAY_SECONDS);
        case FIXED -> Conditioner.threshold(level / 1e3, guard / 1e3);
      };
    }
  }

  /** Whether anyone looks at it. */
  final Watched<Boolean> isShown = new Watched<>(false);

  /** The reference circuit and the one that is tried, side by side, on what was examined so. */
  record Outcome(
      Examination of,
      ConditionerReplay.Result reference,
      ConditionerReplay.Result tried,
      TriedInput drawn) {}

  /** What is to be drawn along the signal that is open. */
  Optional<TriedInput> drawn() {
    Optional<Examination> open = bench.session.get().flatMap(Session::examination);
    return outcome
        .get()
        .filter(o -> isShown.get() && open.filter(e -> e == o.of()).isPresent())
        .map(Outcome::drawn);
  }

  /** Tells whoever draws it of every change. */
  void watchDrawn(Runnable listener) {
    isShown.watch(s -> listener.run());
    outcome.watch(o -> listener.run());
  }

  private record Prepared(Examination examination, Optional<InputReplay> replay) {}

  /**
   * Plays the signal anew; the outcome comes later, unless that of a later call was there before.
   */
  void play() {
    long mine = ++asked;
    Optional<Examination> open = bench.session.get().flatMap(Session::examination);
    Conditioner circuit = setting.get().conditioner();
    bench.aside(
        e -> Complaint.of(Phrases.of("command.whatIf"), e),
        () -> open.flatMap(e -> replay(e).map(r -> outcome(e, r, circuit))),
        found -> {
          if (mine > answered) {
            answered = mine;
            outcome.set(found);
          }
        });
  }

  private static Outcome outcome(Examination examination, InputReplay replay, Conditioner circuit) {
    List<ConditionerReplay.Result> both = replay.play(List.of(Conditioner.reference(), circuit));
    return new Outcome(examination, both.get(0), both.get(1), TriedInput.of(both.get(1)));
  }

  /** Prepared once for each examination; twice does no harm. */
  private Optional<InputReplay> replay(Examination examination) {
    Prepared last = prepared.get();
    if (last == null || last.examination() != examination) {
      last = new Prepared(examination, InputReplay.of(examination));
      prepared.set(last);
    }
    return last.replay();
  }
}
