/**
 * What changed between two examinations of the same engine, and is it more than their uncertainty?
 *
 * <p>In: two {@link toothmark.compare.RecordedExamination}s. Out: a {@link
 * toothmark.compare.Comparison}.
 */
package toothmark.compare;
