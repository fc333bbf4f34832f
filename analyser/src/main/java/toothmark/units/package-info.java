/**
 * What is a second, a crank degree, a rev/min, and a value with its uncertainty; and how are they
 * and files called where the user reads of them?
 *
 * <p>In memory everything is in seconds, volts (or amperes), crank degrees and rev/min.
 */
package toothmark.units;
