package toothmark.compare;

/**
 * A finding as a result file holds it.
 *
 * @param id lower-case words joined by hyphens
 * @param severity "fault", "watch" or "note"
 * @param title one sentence
 */
public record RecordedFinding(String id, String severity, String title) {}
