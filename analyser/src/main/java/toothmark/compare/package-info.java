/**
 * What changed between examinations of the same engine, and is it more than their uncertainty?
 *
 * <p>In: {@link toothmark.compare.RecordedExamination}s. Out: a {@link
 * toothmark.compare.Comparison} of two, or a {@link toothmark.compare.Drift} over several.
 */
package toothmark.compare;
