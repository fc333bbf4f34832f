package toothmark.capture.store;

/**
 * Where a run of numbers goes.
 *
 * @param into the array
 * @param offset index in it of the first number
 * @param first index in the column of the first number
 * @param length how many
 */
record Run(double[] into, int offset, long first, int length) {}
