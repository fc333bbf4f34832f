package toothmark.simulator;

/** What looks at the wheel. */
public sealed interface Sensor {

  /** The edge of a switching sensor's output. */
  enum Edge {
    /** From low to high. */
    RISING,
    /** From high to low. */
    FALLING;

    Edge other() {
      return this == RISING ? FALLING : RISING;
    }
  }

  /** Which way round the two wires of a coil are connected. */
  enum Polarity {
    /** Positive voltage as a tooth approaches. */
    NORMAL,
    /** Negative voltage as a tooth approaches. */
    REVERSED
  }

  /**
   * A coil round a magnet (variable reluctance). Voltage is the rate of change of its flux.
   *
   * @param polarity which way round it is connected
   * @param gapMm clearance to a tooth tip
   * @param peakVoltsPer1000Rpm peak voltage at 1000 rev/min and {@link #REFERENCE_GAP_MM}
   * @param lagSeconds time constant of coil and load; every edge comes this much late at low
   *     frequency
   */
  record VariableReluctance(
      Polarity polarity, double gapMm, double peakVoltsPer1000Rpm, double lagSeconds)
      implements Sensor {
    /** Clearance at which {@code peakVoltsPer1000Rpm} holds. */
    public static final double REFERENCE_GAP_MM = 0.8;

    /** A healthy one: 0.8 mm, 3.5 V at 1000 rev/min, 12 microseconds. */
    public static final VariableReluctance USUAL =
        new VariableReluctance(Polarity.NORMAL, REFERENCE_GAP_MM, 3.5, 12e-6);

    /**
     * The same with its wires the other way round.
     *
     * @return a changed copy
     */
    public VariableReluctance reversed() {
      Polarity other = polarity == Polarity.NORMAL ? Polarity.REVERSED : Polarity.NORMAL;
      return new VariableReluctance(other, gapMm, peakVoltsPer1000Rpm, lagSeconds);
    }

    /**
     * The same at another clearance.
     *
     * @param otherMm clearance, millimetres
     * @return a changed copy
     */
    public VariableReluctance withGapMm(double otherMm) {
      return new VariableReluctance(polarity, otherMm, peakVoltsPer1000Rpm, lagSeconds);
    }

    /**
     * The same with another signal strength.
     *
     * @param volts peak at 1000 rev/min and the reference gap
     * @return a changed copy
     */
    public VariableReluctance withPeakVoltsPer1000Rpm(double volts) {
      return new VariableReluctance(polarity, gapMm, volts, lagSeconds);
    }
  }

  /**
   * A switching (Hall) sensor.
   *
   * @param steadyEdge the edge at a tooth's place, which hardly moves
   * @param timedEdge the edge that the controller has been told to time
   * @param toothShare width of the pulse as a share of the pitch
   * @param steadyScatterDegrees standard deviation of the steady edge, degrees of the wheel
   * @param otherScatterDegrees standard deviation of the other edge
   */
  record Hall(
      Edge steadyEdge,
      Edge timedEdge,
      double toothShare,
      double steadyScatterDegrees,
      double otherScatterDegrees)
      implements Sensor {
    /** A healthy one, timed at its falling edge. */
    public static final Hall USUAL = new Hall(Edge.FALLING, Edge.FALLING, 0.5, 0.01, 0.06);

    /**
     * The same with the controller told the other edge.
     *
     * @return a changed copy
     */
    public Hall timedAtTheOtherEdge() {
      return new Hall(
          steadyEdge, timedEdge.other(), toothShare, steadyScatterDegrees, otherScatterDegrees);
    }

    /**
     * How much earlier than a tooth's place the timed edge passes, degrees of the wheel. The output
     * is high from the rising edge to the falling one.
     */
    double timedEarlyDegrees(double pitchDegrees) {
      if (timedEdge == steadyEdge) {
        return 0.0;
      }
      double width = toothShare * pitchDegrees;
      return steadyEdge == Edge.FALLING ? width : -width;
    }
  }
}
