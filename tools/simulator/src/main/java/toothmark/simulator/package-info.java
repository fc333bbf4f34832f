/**
 * What would a bench with a known engine, wheel, sensor, controller and recorder have recorded?
 *
 * <p>Front door: {@link toothmark.simulator.Simulation}. In: a {@link
 * toothmark.simulator.Scenario}. Out: a {@link toothmark.simulator.SimulatedCapture} with its
 * {@link toothmark.simulator.Truth}, which comes from the simulated machine and never from looking
 * at the signal. Nothing here knows the analyser.
 *
 * <p>Units: seconds, volts, crank degrees, rev/min, millimetres. Angles grow in the direction of
 * rotation; the crank angle is zero at TDC of cylinder 1 on compression.
 */
package toothmark.simulator;
