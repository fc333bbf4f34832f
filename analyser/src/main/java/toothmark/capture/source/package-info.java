/**
 * Where do the bytes of a capture come from?
 *
 * <p>In: a file, plain or compressed. Out: its bytes in order, with progress told, a stop heard and
 * broken compression put into words. Front door: {@link toothmark.capture.source.ByteSource}.
 */
package toothmark.capture.source;
