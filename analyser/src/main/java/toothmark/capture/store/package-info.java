/**
 * Where are samples kept, so that a capture of any size fits into little memory?
 *
 * <p>In: numbers as decimal mantissa and power of ten, block by block. Out: the same numbers as
 * doubles, bit for bit the nearest to the decimal ones, from anywhere and any number of times. A
 * block is packed into the smallest whole number of bytes a sample; what passes the memory budget
 * goes to a temporary file that vanishes with the program. Front door: {@link
 * toothmark.capture.store.SampleStore}.
 */
package toothmark.capture.store;
