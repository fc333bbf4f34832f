package toothmark.simulator;

import java.util.List;

/** One recorded channel. */
public sealed interface Trace {
  /** What is on the channel. */
  enum Role {
    /** The crank sensor. */
    CRANK,
    /** A coil's drive or primary. */
    COIL,
    /** The mark at TDC of cylinder 1. */
    TDC
  }

  /**
   * What is on the channel.
   *
   * @return its role
   */
  Role role();

  /**
   * A name.
   *
   * @return {@code crank}, {@code coil 1}, {@code tdc}
   */
  String name();

  /** Voltages at even times. */
  final class Analogue implements Trace {
    private final Role role;
    private final String name;
    private final float[] volts;

    Analogue(Role role, String name, float[] volts) {
      this.role = role;
      this.name = name;
      this.volts = volts;
    }

    @Override
    public Role role() {
      return role;
    }

    @Override
    public String name() {
      return name;
    }

    /**
     * How many samples there are.
     *
     * @return their number
     */
    public int size() {
      return volts.length;
    }

    /**
     * One sample.
     *
     * @param index from 0
     * @return volts; infinite where the recorder ran out of range
     */
    public float volts(int index) {
      return volts[index];
    }

    /**
     * All samples.
     *
     * @return a copy, volts
     */
    public float[] toFloats() {
      return volts.clone();
    }

    /**
     * All samples in double precision.
     *
     * @return a copy, volts
     */
    public double[] toDoubles() {
      double[] copy = new double[volts.length];
      for (int i = 0; i < copy.length; i++) {
        copy[i] = volts[i];
      }
      return copy;
    }
  }

  /**
   * Low and high.
   *
   * @param role what is on the channel
   * @param name of the channel
   * @param levels capture times at which it changes
   */
  record Logic(Role role, String name, LevelChanges levels) implements Trace {}

  /**
   * Times of timing edges alone.
   *
   * @param role what is on the channel
   * @param name of the channel
   * @param edges capture times, seconds
   */
  record Edges(Role role, String name, List<Double> edges) implements Trace {
    /** Copies the list. */
    public Edges {
      edges = List.copyOf(edges);
    }
  }
}
