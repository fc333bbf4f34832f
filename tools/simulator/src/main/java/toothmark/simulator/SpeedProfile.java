package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;

/**
 * What drives the crank, phase after phase. Phases follow each other from time zero; the last one
 * is held to the end of the capture.
 *
 * @param startRpm speed at time zero; zero for an engine at rest
 * @param phases in time order
 * @param unevenness how unevenly it burns
 */
public record SpeedProfile(double startRpm, List<Phase> phases, Unevenness unevenness) {

  /** What turns the crank. */
  public enum Drive {
    /** The starter motor, through its overrunning clutch, towards the target as mean speed. */
    STARTER,
    /** Combustion, with as much torque as the target speed asks for. */
    FIRING,
    /** Nothing: friction and the air in the cylinders slow the crank. */
    COASTING
  }

  /**
   * One stretch of time.
   *
   * @param drive what turns the crank
   * @param seconds how long
   * @param targetRpm speed at its end; the target goes there in a straight line
   * @param manifoldBar absolute pressure in the intake: about 0.35 at idle, 1.0 wide open or
   *     cranking; scales the compression ripple
   */
  public record Phase(Drive drive, double seconds, double targetRpm, double manifoldBar) {}

  /**
   * How far the engine is from turning evenly; the ripple of compression comes on top, from the
   * engine itself.
   *
   * @param combustion standard deviation of one firing's torque from the next, as a share
   * @param wander amplitude of slow changes of speed, as a share
   */
  public record Unevenness(double combustion, double wander) {
    /** A healthy engine. */
    public static final Unevenness USUAL = new Unevenness(0.08, 0.006);
  }

  /**
   * A profile with the usual unevenness.
   *
   * @param startRpm speed at time zero
   * @param phases in time order
   */
  public SpeedProfile(double startRpm, List<Phase> phases) {
    this(startRpm, phases, Unevenness.USUAL);
  }

  /** Copies the list and checks that there is a phase. */
  public SpeedProfile {
    phases = List.copyOf(phases);
    if (phases.isEmpty() || startRpm < 0) {
      throw new IllegalArgumentException("a speed profile needs a phase and a start speed >= 0");
    }
  }

  /**
   * One speed, as at idle or held by hand.
   *
   * @param rpm speed, rev/min
   * @return the profile
   */
  public static SpeedProfile steady(double rpm) {
    double manifoldBar = Math.min(0.75, 0.32 + rpm / 20000.0);
    return new SpeedProfile(rpm, List.of(new Phase(Drive.FIRING, 1.0, rpm, manifoldBar)));
  }

  /**
   * Turned by the starter all the time, already up to speed.
   *
   * @param rpm speed, rev/min
   * @return the profile
   */
  public static SpeedProfile cranking(double rpm) {
    return new SpeedProfile(rpm, List.of(new Phase(Drive.STARTER, 1.0, rpm, 1.0)));
  }

  /**
   * From one speed to another in a straight line, then held.
   *
   * @param fromRpm at time zero
   * @param toRpm at the end
   * @param seconds how long, seconds
   * @return the profile
   */
  public static SpeedProfile sweep(double fromRpm, double toRpm, double seconds) {
    return new SpeedProfile(fromRpm, List.of(new Phase(Drive.FIRING, seconds, toRpm, 0.7)));
  }

  /**
   * From rest on the starter, first fire, flare, and down to idle.
   *
   * @param crankingRpm mean speed on the starter
   * @param crankingSeconds until first fire
   * @param idleRpm after the flare
   * @return the profile
   */
  public static SpeedProfile start(double crankingRpm, double crankingSeconds, double idleRpm) {
    return new SpeedProfile(
        0.0,
        List.of(
            new Phase(Drive.STARTER, 0.02, crankingRpm, 1.0),
            new Phase(Drive.STARTER, crankingSeconds - 0.02, crankingRpm, 1.0),
            new Phase(Drive.FIRING, 0.02, idleRpm * 1.4, 0.8),
            new Phase(Drive.FIRING, 0.35, idleRpm * 1.4, 0.6),
            new Phase(Drive.FIRING, 0.8, idleRpm, 0.4)));
  }

  /**
   * Runs, then the ignition goes off and the crank comes to rest, rocking back at the end.
   *
   * @param rpm speed, rev/min
   * @param runningSeconds until the ignition goes off
   * @return the profile
   */
  public static SpeedProfile stall(double rpm, double runningSeconds) {
    return new SpeedProfile(
        rpm,
        List.of(
            new Phase(Drive.FIRING, runningSeconds, rpm, 0.4),
            new Phase(Drive.COASTING, 10.0, 0.0, 0.7)));
  }

  /**
   * Adds a straight line to a further speed.
   *
   * @param toRpm at the end
   * @param seconds how long, seconds
   * @return the profile
   */
  public SpeedProfile then(double toRpm, double seconds) {
    List<Phase> longer = new ArrayList<>(phases);
    longer.add(new Phase(Drive.FIRING, seconds, toRpm, 0.6));
    return new SpeedProfile(startRpm, longer, unevenness);
  }

  /**
   * The same, more or less uneven.
   *
   * @param other what takes its place
   * @return the profile
   */
  public SpeedProfile withUnevenness(Unevenness other) {
    return new SpeedProfile(startRpm, phases, other);
  }
}
