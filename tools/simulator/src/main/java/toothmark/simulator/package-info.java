/**
 * What would an engine like this have put on the wires, and what was the truth?
 *
 * <p>A seeded physical model of wheel, sensor, engine, controller and recorder. It shares no code
 * with the analyser, so that agreement between the two means something.
 */
package toothmark.simulator;
