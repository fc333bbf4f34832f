/**
 * How would a recorder have written a simulated capture to a file, and what goes beside it?
 *
 * <p>Front door: {@link toothmark.simulator.file.CaseFolder}. In: a {@link
 * toothmark.simulator.SimulatedCapture} and a {@link toothmark.simulator.file.Dialect}. Out: a
 * folder with the capture, its job sheet, the controller's log and the truth. The same capture and
 * dialect always give the same bytes.
 */
package toothmark.simulator.file;
