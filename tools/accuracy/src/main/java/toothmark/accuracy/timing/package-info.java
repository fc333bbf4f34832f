/**
 * How well offset and delay of the sparks are measured, and whether what is stated of them holds.
 */
package toothmark.accuracy.timing;
