package toothmark.wheel;

/**
 * One event of a decoding.
 *
 * @param timeSeconds when, s
 * @param uncertaintySeconds standard uncertainty of the time, s
 * @param kind tooth seen, tooth missing or stray
 * @param tooth number from 1; 0 for a stray
 * @param revolution counted from 0 at the first tooth 1
 * @param confidence posterior probability that the label is right, 0 to 1
 * @param strength strength of the edge; 0 for a missing tooth
 */
public record ToothEvent(
    double timeSeconds,
    double uncertaintySeconds,
    ToothKind kind,
    int tooth,
    int revolution,
    double confidence,
    double strength) {}
