/**
 * What does a value change dump say?
 *
 * <p>In: a file in the format of IEEE 1364-2005, clause 18. Out: a {@link
 * toothmark.capture.Capture} with a {@link toothmark.capture.StepSignal} for each variable. Front
 * door: {@link toothmark.capture.vcd.ValueChangeDump}.
 */
package toothmark.capture.vcd;
