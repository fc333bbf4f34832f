package toothmark.compare;

/**
 * One examination of a job that was examined several times.
 *
 * @param when when the capture was made, as well as it is known
 * @param examination what is on record
 */
public record Visit(When when, RecordedExamination examination) {}
