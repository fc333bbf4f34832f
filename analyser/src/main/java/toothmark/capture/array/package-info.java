/**
 * What do arrays of numbers say?
 *
 * <p>In: a NumPy array or archive of arrays, a MATLAB file, an HDF5 file, or bare numbers whose
 * form the user states. Out: a {@link toothmark.capture.Capture}; names, units and times are
 * understood as those of the columns of a text are. Front door: {@link
 * toothmark.capture.array.ArrayCapture}.
 */
package toothmark.capture.array;
