/**
 * The front door: runs the whole chain and keeps what each stage found.
 *
 * <p>In: a {@link toothmark.capture.Capture} and a {@link toothmark.examination.JobSheet}. Out: an
 * examination.
 */
package toothmark.examination;
