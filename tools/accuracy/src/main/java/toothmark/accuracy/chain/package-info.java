/**
 * The whole way from file to result files: case folders are read, examined and written as the
 * command line does, and the result files compared with the truth beside the capture.
 */
package toothmark.accuracy.chain;
