package toothmark.compare;

import java.time.LocalDate;

/**
 * One examination of a job that was examined several times.
 *
 * @param date when the capture was made, as well as it is known
 * @param examination what is on record
 */
public record Visit(LocalDate date, RecordedExamination examination) {}
