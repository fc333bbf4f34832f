package toothmark.findings;

/**
 * A check that could not run.
 *
 * @param id of the finding it would have made
 * @param reason what the capture or the job sheet lacks, one sentence
 */
public record NotExamined(String id, String reason) {}
