/**
 * How well edges are found, wheels named and teeth labelled: the analyser beside two decoders that
 * decide from one interval ratio at a time, on the same captures.
 */
package toothmark.accuracy.decode;
