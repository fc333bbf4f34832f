package toothmark.findings;

import java.util.OptionalInt;
import toothmark.units.Interval;

/**
 * Teeth in a row that gave no edge, or none that the receiver took.
 *
 * @param first index of the first in {@link Turns}
 * @param count how many, at least 1
 * @param during from the tooth before to the tooth after, s
 * @param number number of the first tooth on the wheel
 * @param rpm speed
 * @param absent how many of them gave no edge even to the decoding
 * @param stray index of the stray just before or among them
 */
record LostTeeth(
    int first, int count, Interval during, int number, double rpm, int absent, OptionalInt stray) {}
