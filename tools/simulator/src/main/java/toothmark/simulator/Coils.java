package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;

/**
 * The coils and how they are wired.
 *
 * @param layout which cylinders share a coil
 * @param signal what the recorder sees of a coil
 * @param outputs for each coil the controller's output that drives it; empty when all are right
 * @param silent indexes of coils that never fire
 * @param reliability how often a spark does not come, or comes twice
 */
public record Coils(
    Layout layout,
    Signal signal,
    List<Integer> outputs,
    List<Integer> silent,
    Reliability reliability) {

  /** Which cylinders share a coil. */
  public enum Layout {
    /** Two cylinders a coil, a spark every turn. */
    WASTED_SPARK,
    /** One coil for each cylinder, a spark every second turn. */
    ONE_PER_CYLINDER,
    /** One coil for all, and a distributor. */
    DISTRIBUTOR
  }

  /** What the recorder sees. */
  public enum Signal {
    /** The drive: high while charging, the spark at its fall. */
    DRIVE,
    /** The primary's low side: low while charging, flyback at the spark. */
    PRIMARY_VOLTAGE
  }

  /**
   * How often something goes wrong, at random.
   *
   * @param missShare share of sparks that do not come
   * @param repeatShare share of sparks after which a second, short charge follows at once
   */
  public record Reliability(double missShare, double repeatShare) {
    /** Never. */
    public static final Reliability FULL = new Reliability(0.0, 0.0);
  }

  /** Healthy coils that two cylinders share, seen at their drive. */
  public static final Coils WASTED_SPARK =
      new Coils(Layout.WASTED_SPARK, Signal.DRIVE, List.of(), List.of(), Reliability.FULL);

  /** Copies the lists. */
  public Coils {
    outputs = List.copyOf(outputs);
    silent = List.copyOf(silent);
  }

  /**
   * The same in another layout.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Coils withLayout(Layout other) {
    return new Coils(other, signal, outputs, silent, reliability);
  }

  /**
   * The same, seen otherwise.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Coils withSignal(Signal other) {
    return new Coils(layout, other, outputs, silent, reliability);
  }

  /**
   * The same with coils on other outputs.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Coils withOutputs(List<Integer> other) {
    return new Coils(layout, signal, other, silent, reliability);
  }

  /**
   * The same with a coil that never fires.
   *
   * @param index of the coil
   * @return a changed copy
   */
  public Coils withSilentCoil(int index) {
    return new Coils(layout, signal, outputs, List.of(index), reliability);
  }

  /**
   * The same with sparks that do not come.
   *
   * @param share of all sparks, 0 to 1
   * @return a changed copy
   */
  public Coils withMissShare(double share) {
    Reliability other = new Reliability(share, reliability.repeatShare());
    return new Coils(layout, signal, outputs, silent, other);
  }

  /**
   * The same with sparks that come twice.
   *
   * @param share of all sparks
   * @return a changed copy
   */
  public Coils withRepeatShare(double share) {
    Reliability other = new Reliability(reliability.missShare(), share);
    return new Coils(layout, signal, outputs, silent, other);
  }

  /**
   * How many coils an engine has.
   *
   * @param engine that they are on
   * @return at least 1
   */
  public int count(Engine engine) {
    return switch (layout) {
      case WASTED_SPARK -> (engine.cylinders() + 1) / 2;
      case ONE_PER_CYLINDER -> engine.cylinders();
      case DISTRIBUTOR -> 1;
    };
  }

  /**
   * The cylinders of one coil, in firing order.
   *
   * @param engine that they are on
   * @param coil index of the coil
   * @return their numbers
   */
  public List<Integer> cylinders(Engine engine, int coil) {
    int coils = count(engine);
    List<Integer> cylinders = new ArrayList<>();
    for (int i = coil; i < engine.cylinders(); i += coils) {
      cylinders.add(engine.firingOrder().get(i));
    }
    return cylinders;
  }

  /** The coil that a controller's output drives. */
  int coilOfOutput(int output) {
    return outputs.isEmpty() ? output : outputs.indexOf(output);
  }
}
