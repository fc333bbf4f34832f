/**
 * How fast is the reader?
 *
 * <p>In: a capture. Out: what the scripts beside this module make of it too, for a race between
 * them.
 */
package toothmark.speed;
