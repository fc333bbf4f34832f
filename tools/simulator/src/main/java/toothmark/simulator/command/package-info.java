/**
 * How does one get captures onto the disk?
 *
 * <p>Front door: {@link toothmark.simulator.command.Main}. In: the name of a sample, a fault or a
 * count of random cases, and a seed. Out: case folders.
 */
package toothmark.simulator.command;
